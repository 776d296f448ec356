using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;
using Tarry.Statistics.Quantiles;

namespace Tarry.Findings.Conditions;

/// <summary>How much the latencies of a condition vary: standard deviation and spread.</summary>
/// <remarks>
/// Over several sessions the interval is of the logarithm of the session values, t with moderated variance, so that it
/// never reaches below zero and conditions of different size can be pooled.
/// </remarks>
internal static class ScaleEstimate
{
    public const int FewestForSpread = 100;
    private const double LowLevel = 0.05;
    private const double HighLevel = 0.95;

    /// <summary>The logarithm of a session's standard deviation; null where it has none.</summary>
    public static double? LogStandardDeviation(SessionSample session) =>
        session.Latencies.Count >= 2 ? LogOf(Moments.StandardDeviation(session.Latencies.InOrder)) : null;

    /// <summary>The logarithm of a session's spread; null where it has none.</summary>
    public static double? LogSpread(SessionSample session) =>
        session.Latencies.Count >= FewestForSpread ? LogOf(SpreadOf(session.Latencies.Sorted)) : null;

    /// <summary>Root mean square of the session standard deviations.</summary>
    public static EstimateOutcome<LatencyDifference> StandardDeviation(PooledSample pool, SessionScatter logs)
    {
        var sessions = pool.Sessions.Where(session => session.Latencies.Count >= 2).ToList();
        if (sessions.Count == 0)
        {
            return new NotEnough<LatencyDifference>(pool.Sorted.Length, 2, "responses");
        }

        var value = Math.Sqrt(sessions.Average(session => Moments.Variance(session.Latencies.InOrder)));
        if (sessions.Count > 1)
        {
            return OverSessions(value, logs, sessions, sessions.Count(session => LogStandardDeviation(session) is not null));
        }

        var latencies = sessions[0].Latencies.InOrder;
        var half = value > 0 ? NormalDistribution.Quantile(0.975) * Math.Sqrt(Math.Max(0, Kurtosis(latencies) - 1) / (4.0 * latencies.Length)) : 0;
        return Estimates.Difference(value, value * Math.Exp(-half), value * Math.Exp(half), MethodName.KurtosisWithinSession, sessions);
    }

    /// <summary>p95 - p5 over all trials.</summary>
    public static EstimateOutcome<LatencyDifference> Spread(PooledSample pool, SessionScatter logs)
    {
        if (pool.Sorted.Length < FewestForSpread)
        {
            return new NotEnough<LatencyDifference>(pool.Sorted.Length, FewestForSpread, "responses");
        }

        if (SampleQuantile.Of(pool.Sorted, HighLevel, missed: pool.Missed) is not { } high)
        {
            return new NotEnough<LatencyDifference>(pool.Sorted.Length, (int)Math.Ceiling(HighLevel * (pool.Sorted.Length + pool.Missed)), "responses");
        }

        var value = high - SampleQuantile.Of(pool.Sorted, LowLevel, missed: pool.Missed)!.Value;
        var sessions = pool.Sessions.Where(session => session.Latencies.Count >= FewestForSpread).ToList();
        if (sessions.Count > 1)
        {
            return OverSessions(value, logs, sessions, sessions.Count(session => LogSpread(session) is not null));
        }

        // Bonferroni over the two quantiles: each at 97.5 %.
        const double each = 0.975;
        var presses = pool.Sorted.Length + pool.Missed;
        var below = OrderStatisticInterval.Ranks(presses, LowLevel, each);
        var above = OrderStatisticInterval.Ranks(presses, HighLevel, each);
        var upper = Math.Min(above.Upper, pool.Sorted.Length);
        return Estimates.Difference(
            value,
            Math.Max(0, pool.Sorted[above.Lower - 1] - pool.Sorted[below.Upper - 1]),
            pool.Sorted[upper - 1] - pool.Sorted[Math.Max(below.Lower, 1) - 1],
            MethodName.OrderStatisticsWithinSession,
            pool.Sessions);
    }

    private static EstimateOutcome<LatencyDifference> OverSessions(double value, SessionScatter logs, List<SessionSample> sessions, int varying)
    {
        if (value == 0)
        {
            // All values of every session are alike, to the tick.
            return Estimates.Difference(0, 0, 0, MethodName.ModeratedLogScale, sessions);
        }

        // A session whose values are all alike has no logarithm, and says nothing of how the others scatter.
        if (varying < 2 || logs.Of(sessions[0].Key.Condition) is not { } scatter)
        {
            return new NotEnough<LatencyDifference>(varying, 2, "sessions whose latencies vary");
        }

        var half = StudentDistribution.Quantile(0.975, scatter.DegreesOfFreedom) * Math.Sqrt(scatter.Variance / varying);
        return Estimates.Difference(value, value * Math.Exp(-half), value * Math.Exp(half), MethodName.ModeratedLogScale, sessions);
    }

    private static double SpreadOf(ReadOnlySpan<double> sorted) =>
        SampleQuantile.Of(sorted, HighLevel)!.Value - SampleQuantile.Of(sorted, LowLevel)!.Value;

    private static double? LogOf(double value) => value > 0 ? Math.Log(value) : null;

    private static double Square(double value) => value * value;

    private static double Kurtosis(ReadOnlySpan<double> values)
    {
        var mean = Moments.Mean(values);
        double second = 0, fourth = 0;
        foreach (var value in values)
        {
            var square = Square(value - mean);
            second += square;
            fourth += square * square;
        }

        return values.Length * fourth / (second * second);
    }
}
