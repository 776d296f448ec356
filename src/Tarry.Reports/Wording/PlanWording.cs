using Tarry.Findings.Plans;
using static System.FormattableString;

namespace Tarry.Reports.Wording;

/// <summary>A plan in sentences: what it reaches, what it reckons with, what it advises and why.</summary>
public static class PlanWording
{
    // Common practice, no published source: about what makes a whole comparison.
    private const long UsualPresses = 100_000;

    /// <summary>What the plan is to reach.</summary>
    public static string Goal(StudyPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var ms = Numbers.Plain(plan.Goal.Ms);
        var chance = Numbers.Plain(100 * plan.Goal.Assurance);
        var pairs = plan.Conditions.Count * (plan.Conditions.Count - 1) / 2;
        return plan.Goal.Kind switch
        {
            PlanGoalKind.HalfWidth => $"To know the mean of each of {Counted(plan.Conditions.Count, "condition")} to +-{ms} ms (95 %), with a chance of {chance} %:",
            PlanGoalKind.Difference => $"To tell a difference of {ms} ms between two of {Counted(plan.Conditions.Count, "condition")} with {chance} % power, at the share that one of {Counted(pairs, "pair")} has of the 5 %:",
            PlanGoalKind.Equivalence => $"To show, where two of {Counted(plan.Conditions.Count, "condition")} are equal, that they differ by less than {ms} ms, with {chance} % power:",
            _ => throw new InvalidOperationException($"No words for {plan.Goal.Kind}."),
        };
    }

    /// <summary>What scatter it reckons with, and where that is from.</summary>
    public static string Scatter(StudyPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var variances = plan.Variances;
        var own = plan.Goal.Kind != PlanGoalKind.HalfWidth && variances.OwnSessionSdMs < variances.SessionSdMs
            ? Invariant($", of which {variances.OwnSessionSdMs:0.000} ms stay in differences within a sitting")
            : "";
        return Invariant($"Reckoned with: sd between sessions {variances.SessionSdMs:0.000} ms ({Source(variances.SessionSdSource, variances.Sessions)}){own}; sd within a session {variances.TrialSdMs:0.000} ms ({Source(variances.TrialSdSource, variances.Sessions)}).");
    }

    private static string Source(VarianceSource source, int sessions) => source switch
    {
        VarianceSource.Measured => $"measured, {Counted(sessions, "session")}",
        VarianceSource.Stated => "as stated",
        VarianceSource.Default => "assumed, no published source; state your own",
        _ => throw new InvalidOperationException($"No words for {source}."),
    };

    /// <summary>What bench time costs.</summary>
    public static string Costs(StudyPlan plan) => Invariant(
        $"Bench time: {Numbers.Plain(Required(plan).Costs.MinutesPerSitting)} min a sitting, {Numbers.Plain(plan.Costs.MinutesPerCondition)} min a condition, {Numbers.Plain(plan.Costs.SecondsPerPress)} s a press.");

    /// <summary>What the study has already, or null where it has nothing.</summary>
    public static string? Done(StudyPlan plan) => Required(plan).SittingsDone.Count == 0
        ? null
        : $"Sittings are in all; the study has {Counted(plan.SittingsDone.Count, "sitting")} already.";

    /// <summary>What it advises, or that nothing reaches the goal.</summary>
    public static string Advice(StudyPlan plan) => Required(plan).Advised is not { } advised
        ? Invariant($"No number of sittings up to 60 reaches it. With {plan.Alternatives[^1].Sittings} sittings, endless presses would reach {plan.Alternatives[^1].EndlessPressesMs:0.000} ms; make sittings more alike, or ask for less.")
        : Invariant($"Advised: {advised.Sittings} sittings with every condition in each and {advised.TrialsPerSession} trials a session, {advised.Presses} presses and {advised.Hours:0.0} bench hours: the least time from {StudyPlanner.FewestSittingsAdvised} sittings on, since two do not show which of them went wrong. {AgainstUsual(advised.Presses ?? 0)}")
            + Invariant($" What more presses cannot buy: in {advised.Sittings} sittings nothing below {advised.EndlessPressesMs:0.000} ms.");

    private static string AgainstUsual(long presses) => presses > UsualPresses
        ? "That is more than the 100,000 or so that usually make a whole comparison (common practice, no published source): wear counts."
        : "About 100,000 presses usually make a whole comparison (common practice, no published source).";

    /// <summary>Which length of a session uses bench time best.</summary>
    public static string Economy(StudyPlan plan) => Required(plan).EconomicTrialsPerSession is { } trials
        ? Invariant($"At these prices sessions of about {trials} trials use the time best.")
        : "Sessions do not scatter beyond what their trials explain, so that longer ones are always better; that rests on few sessions.";

    private static StudyPlan Required(StudyPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan;
    }

    private static string Counted(long count, string noun) => Invariant($"{count} {noun}{(count == 1 ? "" : "s")}");
}
