using Tarry.Findings.Conditions;
using Tarry.Metrology;

namespace Tarry.Reports.Figures;

/// <summary>The rungs of a ladder: the quantiles of a condition, lowest first.</summary>
internal static class LadderRungs
{
    private const double FarthestOverMedian = 2.5;
    private const double ZeroBelowShare = 0.4;

    /// <summary>Their names, lowest first.</summary>
    public static IReadOnlyList<string> Names { get; } = ["p5", "p25", "p50", "p75", "p95", "p99"];

    /// <summary>The outcomes of a condition, in the order of <see cref="Names"/>.</summary>
    public static IReadOnlyList<EstimateOutcome<Latency>> Of(ConditionFinding condition) =>
        [condition.P05, condition.P25, condition.Median, condition.P75, condition.P95, condition.P99];

    /// <summary>An axis that holds every median; what reaches far beyond is cut and said to be.</summary>
    public static Ticks Cover(IReadOnlyList<RankedRow> rows, int steps)
    {
        var known = rows.SelectMany(row => Of(row.Condition)).OfType<Estimate<Latency>>().ToList();
        if (known.Count == 0)
        {
            return Ticks.Cover(0, 1, steps);
        }

        var medians = rows.Select(row => row.Condition.Median).OfType<Estimate<Latency>>().Select(median => median.Value.Milliseconds).ToList();
        var farthest = medians.Count == 0 ? known.Min(rung => rung.Value.Milliseconds) : medians.Max();
        var high = known.Select(rung => rung.Interval.High.Milliseconds).Where(value => value <= farthest * FarthestOverMedian).Append(farthest).Max();
        var low = known.Select(rung => rung.Interval.Low.Milliseconds).Append(farthest).Min();
        return Ticks.Cover(low >= 0 && low < high * ZeroBelowShare ? 0 : low, high, steps);
    }

    /// <summary>Whether a row has a rung that the axis cuts.</summary>
    public static bool IsCut(Scale scale, RankedRow row) => Of(row.Condition).OfType<Estimate<Latency>>()
        .Any(rung => !scale.Holds(rung.Interval.Low.Milliseconds) || !scale.Holds(rung.Interval.High.Milliseconds));
}
