using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using Tarry.Findings.ReportIntervals;

namespace Tarry.Reports.Merits;

/// <summary>The figures of merit: how soon, how steady, how complete.</summary>
public static class FiguresOfMerit
{
    /// <summary>The mean, which ranks and tie groups are of.</summary>
    public static FigureOfMerit Mean { get; } = Latencies("mean", "mean", condition => condition.Mean);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<FigureOfMerit> All { get; } =
    [
        Mean,
        new("relative", "less reference", "ms", Relative),
        Latencies("median", "median", condition => condition.Median),
        Latencies("p95", "p95", condition => condition.P95),
        Latencies("p99", "p99", condition => condition.P99),
        new("sd", "standard deviation", "ms", condition => MeritValue.Of(condition.StandardDeviation, Quantity.Scatter)),
        new("spread", "spread, p95 less p5", "ms", condition => MeritValue.Of(condition.Spread, Quantity.Scatter)),
        new("late", "late share", "%", condition => MeritValue.Of(condition.LateShare, Quantity.Share)),
        new("missed", "missed share", "%", condition => MeritValue.Of(condition.MissedShare, Quantity.Share)),
        new("interval", "report interval", "ms", Interval),
    ];

    /// <summary>The figure of a key; null where there is none.</summary>
    public static FigureOfMerit? Find(string? key) => All.FirstOrDefault(figure => figure.Key == key);

    private static FigureOfMerit Latencies(string key, string name, Func<ConditionFinding, EstimateOutcome<Latency>> of) =>
        new(key, name, "ms", condition => MeritValue.Of(of(condition), Quantity.Latency)) { IsLatency = true };

    private static MeritValue Relative(ConditionFinding condition) => condition switch
    {
        { IsReference: true } => MeritValue.None("reference"),
        { Relative: { } relative } => MeritValue.Of(relative, Quantity.Difference),
        _ => MeritValue.None("not known"),
    };

    private static MeritValue Interval(ConditionFinding condition) => condition.ReportInterval switch
    {
        { Interval: { } interval } => MeritValue.Of(interval, Quantity.ReportInterval),
        { Unidentified: { } not } => MeritValue.None("not identifiable", ReportIntervalWording.Words(not.Reason)),
        _ => MeritValue.None("not known"),
    };
}
