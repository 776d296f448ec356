using Tarry.Statistics.Planning;

namespace Tarry.Findings.Plans;

/// <summary>Plans a study: from what its conditions scatter, or would if nothing is measured yet, to sittings and trials.</summary>
public static class StudyPlanner
{
    /// <summary>Fewer trials show neither late responses nor drift, and no run stops before: common practice, no published source.</summary>
    public const int FewestTrials = 200;

    /// <summary>Two sittings do not show which of them went wrong: common practice, no published source.</summary>
    public const int FewestSittingsAdvised = 3;

    /// <summary>For want of a measurement: what session means scatter on a bench that is set up anew. An assumption, no published source.</summary>
    public const double DefaultSessionSdMs = 0.2;

    /// <summary>For want of a measurement: an 8 ms wait for a report and a 4 ms wait for a frame, sqrt((8^2 + 4^2)/12) = 2.58 ms, and a little noise.</summary>
    public const double DefaultTrialSdMs = 2.6;

    private const int MostSittings = 60;
    private const int RowsShown = 7;
    private const double ToldAt = 0.05;
    private const double IntervalLevel = 0.95;

    /// <summary>Makes a plan.</summary>
    /// <param name="findings">The findings of the study, with or without data.</param>
    /// <param name="conditions">The ids of the conditions to run in every sitting, the reference among them; at least one.</param>
    /// <param name="request">What is asked.</param>
    /// <exception cref="ArgumentException">There is no condition, or one alone for a goal that compares.</exception>
    public static StudyPlan Of(FindingsDocument findings, IReadOnlyList<string> conditions, PlanRequest request)
    {
        ArgumentNullException.ThrowIfNull(findings);
        ArgumentNullException.ThrowIfNull(conditions);
        ArgumentNullException.ThrowIfNull(request);
        if (conditions.Count < (request.Kind == PlanGoalKind.HalfWidth ? 1 : 2))
        {
            throw new ArgumentException($"A plan for {request.Kind} needs more than {conditions.Count} conditions; declare them first.", nameof(conditions));
        }

        var pairs = conditions.Count * (conditions.Count - 1) / 2;
        var level = request.Kind == PlanGoalKind.Difference ? 1 - (ToldAt / pairs) : IntervalLevel;
        var goal = new PlanGoal(request.Kind, request.Ms ?? findings.MarginMs, request.Assurance, level);
        var variances = Variances(MeasuredVariances.Of(findings), request);
        var design = new PlanDesign(goal, variances, conditions.Count);
        var all = Enumerable.Range(2, MostSittings - 1).Select(sittings => Alternative(design, request.Costs, conditions.Count, sittings)).ToList();
        var advised = all.Where(one => one is { TrialsPerSession: not null, Sittings: >= FewestSittingsAdvised }).MinBy(one => one.Hours);
        var scatter = request.Kind == PlanGoalKind.HalfWidth ? variances.SessionSdMs : variances.OwnSessionSdMs;
        return new StudyPlan
        {
            Title = findings.Title,
            Reference = findings.Reference,
            Conditions = conditions,
            Goal = goal,
            Variances = variances,
            Costs = request.Costs,
            EconomicTrialsPerSession = EconomicTrials.PerSession(request.Costs.SecondsPerSession(conditions.Count), request.Costs.SecondsPerPress, scatter, variances.TrialSdMs) is { } best
                ? Math.Max(FewestTrials, (int)Math.Min(1e6, Math.Round(best)))
                : null,
            Alternatives = Shown(all, advised),
            Advised = advised,
            SittingsDone = [.. findings.Conditions.SelectMany(condition => condition.Sessions).Select(session => session.Key.Sitting).Distinct().Order(StringComparer.Ordinal)],
        };
    }

    private static PlanVariances Variances(MeasuredVariances measured, PlanRequest request)
    {
        var (session, own, sessionSource) = request.SessionSdMs is { } stated ? (stated, stated, VarianceSource.Stated)
            : measured is { SessionSdMs: { } between, OwnSessionSdMs: { } within } ? (between, Math.Min(within, between), VarianceSource.Measured)
            : (DefaultSessionSdMs, DefaultSessionSdMs, VarianceSource.Default);
        var (trial, trialSource) = request.TrialSdMs is { } statedTrial ? (statedTrial, VarianceSource.Stated)
            : measured.TrialSdMs is { } found ? (found, VarianceSource.Measured)
            : (DefaultTrialSdMs, VarianceSource.Default);
        return new PlanVariances(session, own, trial, sessionSource, trialSource, measured.Sessions);
    }

    private static PlanAlternative Alternative(PlanDesign design, PlanCosts costs, int conditions, int sittings)
    {
        int? trials = design.TrialsPerSession(sittings) is { } needed && needed < 1e6 ? Math.Max(FewestTrials, (int)Math.Ceiling(needed)) : null;
        return new PlanAlternative(
            sittings,
            trials,
            trials is { } n ? (long)n * sittings * conditions : null,
            trials is { } each ? costs.Hours(sittings, conditions, each) : null,
            design.Endless(sittings));
    }

    // From the last that cannot do it, as far as the advice and a little beyond.
    private static List<PlanAlternative> Shown(List<PlanAlternative> all, PlanAlternative? advised)
    {
        var first = all.FindIndex(one => one.TrialsPerSession is not null);
        var from = first < 0 ? 0 : Math.Max(0, first - 1);
        var to = Math.Max(from + RowsShown, advised is null ? 0 : all.IndexOf(advised) + 2);
        return all[from..Math.Min(all.Count, to)];
    }
}
