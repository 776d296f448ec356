using Tarry.Metrology;
using Tarry.Statistics.Quantiles;

namespace Tarry.Findings.Conditions;

/// <summary>
/// A quantile of a condition over all its trials, misses as later than any response. Exact order-statistic limits,
/// and over several sessions half-widths of sqrt(h^2 + (t s_b)^2 / J), where s_b is the scatter between sessions; half a
/// step wider where latencies were recorded in coarse steps.
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

        var limits = OrderStatisticInterval.Of(pool.Sorted, quantileLevel, Estimates.Level, pool.Missed);
        if (limits is not { Low: { } low, High: { } high } || SampleQuantile.Of(pool.Sorted, quantileLevel, pool.Missed) is not { } value)
        {
            return new NotEnough<Latency>(pool.Sorted.Length, limits.Ranks.Upper, "responses");
        }

        // Interpolation can put the quantile of a small sample a little outside its order statistics.
        limits = limits with { Low = Math.Min(low, value), High = Math.Max(high, value) };
        var method = MethodName.OrderStatisticsWithinSession;
        if (pool.Sessions.Count > 1)
        {
            // What trials within a session explain of the variance of session means is in the order statistics already.
            var (variance, degreesOfFreedom) = means.Of(pool.Sessions[0].Key.Condition)!.Value;
            var between = Math.Max(0, variance - pool.VarianceWithin);
            limits = SessionQuantileInterval.Of(limits, value, between, degreesOfFreedom, pool.Sessions.Count, Estimates.Level);
            method = MethodName.OrderStatisticsPlusSessionScatter;
        }

        // A recorded value stands for the step around it.
        var halfStep = pool.StepMs / 2;
        return Estimates.Latency(value, limits.Low!.Value - halfStep, limits.High!.Value + halfStep, method, pool.Sessions);
    }
}
