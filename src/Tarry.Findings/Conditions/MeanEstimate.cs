using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;
using Tarry.Statistics.Intervals;

namespace Tarry.Findings.Conditions;

/// <summary>The mean latency of a condition: the unweighted mean of its session means.</summary>
internal static class MeanEstimate
{
    public static EstimateOutcome<Latency> Of(PooledSample pool, SessionScatter means)
    {
        var sessions = pool.Sessions;
        if (sessions.Count == 0)
        {
            return new NotEnough<Latency>(0, 1, "sessions");
        }

        if (sessions.Count == 1)
        {
            return WithinOneSession(sessions[0]);
        }

        var (variance, degreesOfFreedom) = means.Of(sessions[0].Key.Condition)!.Value;
        if (variance == 0)
        {
            // Sessions may agree by chance; their trials still set how well the mean is known.
            variance = pool.VarianceWithin;
        }

        var value = sessions.Average(session => Moments.Mean(session.Latencies.InOrder));
        var limits = StudentInterval.Of(value, Math.Sqrt(variance / sessions.Count), degreesOfFreedom, Estimates.Level);
        return Estimates.Latency(value, limits.Low, limits.High, MethodName.ModeratedSessionMeans, sessions);
    }

    /// <summary>The mean of one session, with the precision that its own batches show.</summary>
    public static EstimateOutcome<Latency> WithinOneSession(SessionSample session)
    {
        var latencies = session.Latencies.InOrder;
        if (latencies.Length < BatchMeansInterval.SmallestCount)
        {
            return new NotEnough<Latency>(latencies.Length, BatchMeansInterval.SmallestCount, "responses");
        }

        var limits = BatchMeansInterval.Of(latencies, 0.95);
        return Estimates.Latency(Moments.Mean(latencies), limits.Low, limits.High, MethodName.BatchMeansWithinSession, [session]);
    }

    /// <summary>The mean of one session, its interval widened by the scatter between sessions that other conditions show.</summary>
    public static Estimate<Latency>? WithBetweenSessions(EstimateOutcome<Latency> within, SessionScatter means, IReadOnlyList<SessionSample> sessions)
    {
        if (sessions.Count != 1 || means.PooledVariance is not { } variance || within is not Estimate<Latency> estimate)
        {
            return null;
        }

        var value = estimate.Value.Milliseconds;
        var half = (estimate.Interval.High.Milliseconds - estimate.Interval.Low.Milliseconds) / 2;
        var t = StudentDistribution.Quantile(0.975, means.PooledDegreesOfFreedom);
        var wide = Math.Sqrt((half * half) + (t * t * variance));
        return Estimates.Latency(value, value - wide, value + wide, MethodName.WithinSessionPlusPooledScatter, sessions);
    }
}
