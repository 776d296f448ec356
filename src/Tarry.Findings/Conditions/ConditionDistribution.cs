using Tarry.Statistics.Quantiles;

namespace Tarry.Findings.Conditions;

/// <summary>The distribution function of a condition's latencies, for figures.</summary>
internal static class ConditionDistribution
{
    private const int FewestResponses = 20;
    private const int MostPoints = 320;
    private const int TailPoints = 40;
    private const double TailShare = 0.01;

    /// <summary>The curve; null with too few responses, or where some are known as intervals only, so that none has a place.</summary>
    public static DistributionCurve? Of(PooledSample pool)
    {
        var sorted = pool.Sorted;
        if (sorted.Length < FewestResponses || pool.Sessions.Any(session => session.IntervalCensored))
        {
            return null;
        }

        var presses = sorted.Length + pool.Missed;
        var points = Ranks(sorted.Length).Select(index => new DistributionPoint(sorted[index], (index + 1.0) / presses));
        return new DistributionCurve([new(sorted[0], 0), .. points], presses, DistributionBand.HalfHeight(presses, Estimates.Level), Estimates.Level);
    }

    // Even steps, and closer ones among the latest, which are few and far between.
    private static IEnumerable<int> Ranks(int count)
    {
        var tail = (int)(count * (1 - TailShare));
        return Even(0, count - 1, MostPoints).Concat(Even(tail, count - 1, TailPoints)).Distinct().Order();
    }

    private static IEnumerable<int> Even(int first, int last, int most)
    {
        var steps = Math.Max(1, Math.Min(most, last - first));
        return Enumerable.Range(0, steps + 1).Select(step => first + (int)((long)(last - first) * step / steps));
    }
}
