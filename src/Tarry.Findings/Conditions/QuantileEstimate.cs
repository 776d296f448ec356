using Tarry.Metrology;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;
using Tarry.Statistics.Quantiles;

namespace Tarry.Findings.Conditions;

/// <summary>
/// A quantile of a condition over all its trials, misses as later than any response. Exact order-statistic limits,
/// and over several sessions half-widths of sqrt(h^2 + (t s_b)^2 / J), where s_b is the scatter between sessions.
/// </summary>
internal static class QuantileEstimate
{
    public static EstimateOutcome<Latency> Of(PooledSample pool, double quantileLevel, SessionScatter means)
    {
        var presses = pool.Sorted.Length + pool.Missed;
        var need = OrderStatisticInterval.SmallestCount(quantileLevel, Estimates.Level);
        if (presses < need)
        {
            return new NotEnough<Latency>(pool.Sorted.Length, need, "responses");
        }

        var ranks = OrderStatisticInterval.Ranks(presses, quantileLevel, Estimates.Level);
        if (ranks.Upper > pool.Sorted.Length || SampleQuantile.Of(pool.Sorted, quantileLevel, missed: pool.Missed) is not { } value)
        {
            return new NotEnough<Latency>(pool.Sorted.Length, ranks.Upper, "responses");
        }

        var low = Math.Min(pool.Sorted[ranks.Lower - 1], value);
        var high = Math.Max(pool.Sorted[ranks.Upper - 1], value);
        var sessions = pool.Sessions;
        if (sessions.Count == 1)
        {
            return Estimates.Latency(value, low, high, MethodName.OrderStatisticsWithinSession, sessions);
        }

        var scatter = Scatter(pool, means);
        return Estimates.Latency(
            value,
            value - Math.Sqrt(((value - low) * (value - low)) + scatter),
            value + Math.Sqrt(((high - value) * (high - value)) + scatter),
            MethodName.OrderStatisticsPlusSessionScatter,
            sessions);
    }

    // (t s_b)^2 / J: the variance of session means less what trials within a session explain of it.
    private static double Scatter(PooledSample pool, SessionScatter means)
    {
        var sessions = pool.Sessions;
        var (variance, degreesOfFreedom) = means.Of(sessions[0].Key.Condition)!.Value;
        var within = sessions.Average(session =>
        {
            if (session.Latencies.Count < 2)
            {
                return 0;
            }

            var sd = Moments.StandardDeviation(session.Latencies.InOrder);
            return sd * sd / session.Latencies.Count;
        });
        var t = StudentDistribution.Quantile(0.975, degreesOfFreedom);
        return t * t * Math.Max(0, variance - within) / sessions.Count;
    }
}
