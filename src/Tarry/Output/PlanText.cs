using Spectre.Console;
using Tarry.Findings.Plans;
using Tarry.Reports.Wording;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>A plan as a table and sentences for a terminal.</summary>
internal static class PlanText
{
    // Common practice, no published source: about what makes a whole comparison.
    private const long UsualPresses = 100_000;

    public static void Write(StudyPlan plan, Terminal terminal)
    {
        terminal.Out.WriteLine(plan.Title);
        terminal.Out.WriteLine(Goal(plan));
        terminal.Out.WriteLine(Scatter(plan));
        terminal.Out.WriteLine();
        WriteTable(plan, terminal);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(Advice(plan));
        terminal.Out.WriteLine(Invariant(
            $"Bench time: {Numbers.Plain(plan.Costs.MinutesPerSitting)} min a sitting, {Numbers.Plain(plan.Costs.MinutesPerCondition)} min a condition, {Numbers.Plain(plan.Costs.SecondsPerPress)} s a press. {Economy(plan)}"));
        if (plan.SittingsDone.Count > 0)
        {
            terminal.Out.WriteLine($"Sittings are in all; the study has {Counted.Of(plan.SittingsDone.Count, "sitting")} already.");
        }
    }

    private static string Goal(StudyPlan plan)
    {
        var ms = Numbers.Plain(plan.Goal.Ms);
        var chance = Numbers.Plain(100 * plan.Goal.Assurance);
        var pairs = plan.Conditions.Count * (plan.Conditions.Count - 1) / 2;
        return plan.Goal.Kind switch
        {
            PlanGoalKind.HalfWidth => $"To know the mean of each of {Counted.Of(plan.Conditions.Count, "condition")} to +-{ms} ms (95 %), with a chance of {chance} %:",
            PlanGoalKind.Difference => $"To tell a difference of {ms} ms between two of {Counted.Of(plan.Conditions.Count, "condition")} with {chance} % power, at the share that one of {Counted.Of(pairs, "pair")} has of the 5 %:",
            PlanGoalKind.Equivalence => $"To show, where two of {Counted.Of(plan.Conditions.Count, "condition")} are equal, that they differ by less than {ms} ms, with {chance} % power:",
            _ => throw new InvalidOperationException($"No words for {plan.Goal.Kind}."),
        };
    }

    private static string Scatter(StudyPlan plan)
    {
        var variances = plan.Variances;
        var own = plan.Goal.Kind != PlanGoalKind.HalfWidth && variances.OwnSessionSdMs < variances.SessionSdMs
            ? Invariant($", of which {variances.OwnSessionSdMs:0.000} ms stay in differences within a sitting")
            : "";
        return Invariant($"Reckoned with: sd between sessions {variances.SessionSdMs:0.000} ms ({Source(variances.SessionSdSource, variances.Sessions)}){own}; sd within a session {variances.TrialSdMs:0.000} ms ({Source(variances.TrialSdSource, variances.Sessions)}).");
    }

    private static string Source(VarianceSource source, int sessions) => source switch
    {
        VarianceSource.Measured => $"measured, {Counted.Of(sessions, "session")}",
        VarianceSource.Stated => "as stated",
        VarianceSource.Default => "assumed, no published source; state your own",
        _ => throw new InvalidOperationException($"No words for {source}."),
    };

    private static void WriteTable(StudyPlan plan, Terminal terminal)
    {
        var table = new Table { Border = TableBorder.Simple, UseSafeBorder = true };
        foreach (var head in new[] { "", "sittings", "trials a session", "presses in all", "bench hours", "with endless presses, ms" })
        {
            table.AddColumn(new TableColumn(head).NoWrap());
        }

        foreach (var one in plan.Alternatives)
        {
            table.AddRow(
                one == plan.Advised ? "advised" : "",
                Invariant($"{one.Sittings}"),
                one.TrialsPerSession is { } trials ? Invariant($"{trials}") : "more presses cannot help; add sittings",
                one.Presses is { } presses ? Invariant($"{presses}") : "-",
                one.Hours is { } hours ? Invariant($"{hours:0.0}") : "-",
                Invariant($"{one.EndlessPressesMs:0.000}"));
        }

        terminal.Tables().Write(table);
    }

    private static string Advice(StudyPlan plan) => plan.Advised is not { } advised
        ? Invariant($"No number of sittings up to 60 reaches it. With {plan.Alternatives[^1].Sittings} sittings, endless presses would reach {plan.Alternatives[^1].EndlessPressesMs:0.000} ms; make sittings more alike, or ask for less.")
        : Invariant($"Advised: {advised.Sittings} sittings with every condition in each and {advised.TrialsPerSession} trials a session, {advised.Presses} presses and {advised.Hours:0.0} bench hours: the least time from {StudyPlanner.FewestSittingsAdvised} sittings on, since two do not show which of them went wrong. {AgainstUsual(advised.Presses ?? 0)}")
            + Invariant($" What more presses cannot buy: in {advised.Sittings} sittings nothing below {advised.EndlessPressesMs:0.000} ms.");

    private static string AgainstUsual(long presses) => presses > UsualPresses
        ? "That is more than the 100,000 or so that usually make a whole comparison (common practice, no published source): wear counts."
        : "About 100,000 presses usually make a whole comparison (common practice, no published source).";

    private static string Economy(StudyPlan plan) => plan.EconomicTrialsPerSession is { } trials
        ? Invariant($"At these prices sessions of about {trials} trials use the time best.")
        : "Sessions do not scatter beyond what their trials explain, so that longer ones are always better; that rests on few sessions.";
}
