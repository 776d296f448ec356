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
    private const int FewestForSpread = 100;
    private const double LowLevel = 0.05;
    private const double HighLevel = 0.95;

    // At the size of a session the usual type 7 draws both quantiles inwards by a good part of the interval.
    private const QuantileType MedianUnbiased = QuantileType.MedianPosition;

    /// <summary>The logarithm of a session's standard deviation; null where it has none.</summary>
    public static double? LogStandardDeviation(SessionSample session) =>
        session.Latencies.Count >= 2 ? LogOf(Moments.StandardDeviation(session.Latencies.InOrder)) : null;

    /// <summary>The logarithm of a session's spread; null where it has none.</summary>
    public static double? LogSpread(SessionSample session) =>
        session.Latencies.Count >= FewestForSpread && SpreadOf(session.Latencies) is { } spread ? LogOf(spread) : null;

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
            return Widened(
                OverSessions(value, logs, sessions, sessions.Count(session => LogStandardDeviation(session) is not null)),
                below: RoundingPart(value, pool.StepMs),
                above: 0);
        }

        var latencies = sessions[0].Latencies.InOrder;
        var half = value > 0 ? NormalDistribution.Quantile(0.975) * Math.Sqrt(Math.Max(0, Kurtosis(latencies) - 1) / (4.0 * latencies.Length)) : 0;
        return Estimates.Difference(
            value,
            Math.Max(0, (value * Math.Exp(-half)) - RoundingPart(value, pool.StepMs)),
            value * Math.Exp(half),
            MethodName.KurtosisWithinSession,
            sessions);
    }

    /// <summary>p95 - p5 within a session; root mean square over sessions.</summary>
    public static EstimateOutcome<LatencyDifference> Spread(PooledSample pool, SessionScatter logs)
    {
        var sessions = pool.Sessions.Where(session => session.Latencies.Count >= FewestForSpread).ToList();
        if (sessions.Count == 0)
        {
            return new NotEnough<LatencyDifference>(pool.Sorted.Length, FewestForSpread, "responses in a session");
        }

        var spreads = sessions.Select(session => SpreadOf(session.Latencies)).OfType<double>().ToList();
        if (spreads.Count < sessions.Count)
        {
            return new NotEnough<LatencyDifference>(spreads.Count, sessions.Count, "sessions whose p95 is not among the misses");
        }

        var value = Math.Sqrt(spreads.Average(Square));
        return Widened(
            sessions.Count > 1
                ? OverSessions(value, logs, sessions, sessions.Count(session => LogSpread(session) is not null))
                : SpreadWithin(value, sessions[0].Latencies, sessions),
            below: pool.StepMs,
            above: pool.StepMs);
    }

    // Bonferroni over the two quantiles: each at 97.5 %.
    private static Estimate<LatencyDifference> SpreadWithin(double value, Sample latencies, List<SessionSample> sessions)
    {
        const double each = 0.975;
        var presses = latencies.Count + latencies.Missed;
        var below = OrderStatisticInterval.Ranks(presses, LowLevel, each);
        var above = OrderStatisticInterval.Ranks(presses, HighLevel, each);
        var sorted = latencies.Sorted;
        return Estimates.Difference(
            value,
            Math.Clamp(sorted[Math.Min(above.Lower, sorted.Length) - 1] - sorted[below.Upper - 1], 0, value),
            Math.Max(value, sorted[Math.Min(above.Upper, sorted.Length) - 1] - sorted[Math.Max(below.Lower, 1) - 1]),
            MethodName.OrderStatisticsWithinSession,
            sessions);
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

    // How much of a standard deviation rounding to the step can have added (W. F. Sheppard, 1898: step^2/12 of the variance).
    private static double RoundingPart(double value, double stepMs) =>
        value - Math.Sqrt(Math.Max(0, (value * value) - (stepMs * stepMs / 12)));

    private static EstimateOutcome<LatencyDifference> Widened(EstimateOutcome<LatencyDifference> outcome, double below, double above) =>
        outcome is Estimate<LatencyDifference> estimate
            ? estimate with
            {
                Interval = new(
                    LatencyDifference.FromMilliseconds(Math.Max(0, estimate.Interval.Low.Milliseconds - below)),
                    LatencyDifference.FromMilliseconds(estimate.Interval.High.Milliseconds + above)),
            }
            : outcome;

    private static double? SpreadOf(Sample latencies) =>
        SampleQuantile.Of(latencies.Sorted, HighLevel, latencies.Missed, MedianUnbiased) is { } high
            ? high - SampleQuantile.Of(latencies.Sorted, LowLevel, latencies.Missed, MedianUnbiased)!.Value
            : null;

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
