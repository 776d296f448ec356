using Tarry.Findings.Conditions;
using Tarry.Metrology;

namespace Tarry.Reports.Figures;

/// <summary>The axis of the standing: it holds every mean; what reaches far beyond them is cut and said to be.</summary>
internal static class StandingScale
{
    private const double FarthestOverMean = 2.5;
    private const double ZeroBelowShare = 0.4;

    /// <summary>Ticks that cover the rows.</summary>
    public static Ticks Cover(IReadOnlyList<RankedRow> rows, int steps)
    {
        var means = rows.Where(row => row.Mean is not null).Select(row => row.Mean!.Value.Milliseconds).ToList();
        if (means.Count == 0)
        {
            return Ticks.Cover(0, 1, steps);
        }

        var limit = means.Max() * FarthestOverMean;
        var high = rows.SelectMany(Upper).Where(value => value <= limit).Append(means.Max()).Max();
        var low = rows.SelectMany(Lower).Append(means.Min()).Min();
        // A latency axis begins at zero unless that would leave it mostly empty.
        return Ticks.Cover(low < high * ZeroBelowShare ? 0 : low, high, steps);
    }

    private static IEnumerable<double> Upper(RankedRow row) => Bounds(row.Condition, interval => interval.High, row.Condition.P95);

    private static IEnumerable<double> Lower(RankedRow row) => Bounds(row.Condition, interval => interval.Low, row.Condition.P05);

    private static IEnumerable<double> Bounds(ConditionFinding condition, Func<Interval<Latency>, Latency> bound, EstimateOutcome<Latency> quantile)
    {
        if (condition.Mean is Estimate<Latency> mean)
        {
            yield return bound(mean.Interval).Milliseconds;
        }

        if (quantile is Estimate<Latency> estimate)
        {
            yield return estimate.Value.Milliseconds;
        }
    }
}
