using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Statistics.Intervals;
using Tarry.Statistics.Quantiles;

namespace Tarry.Findings.Conditions;

/// <summary>Shares of trials: late among the responses, missed among the presses.</summary>
internal static class ShareEstimate
{
    private const double LateBeyondMedianMs = 10;

    /// <summary>From where a response counts as late: beyond the known waits of the chain, else 10 ms beyond the median.</summary>
    public static LateDefinition? Definition(EstimateOutcome<Latency> median, KnownWaits? waits = null) =>
        waits is not null
            ? new LateDefinition(Latency.FromMilliseconds(waits.LatestMs), waits.Words)
            : median is Estimate<Latency> estimate
                ? new LateDefinition(
                    Latency.FromMilliseconds(estimate.Value.Milliseconds + LateBeyondMedianMs),
                    "later than the median + 10 ms")
                : null;

    /// <summary>The share of responses later than the definition's threshold.</summary>
    public static EstimateOutcome<Proportion> Late(PooledSample pool, LateDefinition? definition)
    {
        if (definition is null)
        {
            return new NotEnough<Proportion>(pool.Sorted.Length, OrderStatisticInterval.SmallestCount(0.5, Estimates.Level), "responses");
        }

        var threshold = definition.Threshold.Milliseconds;
        var sessions = pool.Sessions.Where(session => session.Latencies.Count > 0).ToList();
        return OverSessions(
            sessions.Select(session => CountAbove(session.Latencies.Sorted, threshold)).ToArray(),
            sessions.Select(session => session.Latencies.Count).ToArray());
    }

    /// <summary>The share of presses without a response.</summary>
    public static EstimateOutcome<Proportion> Missed(IReadOnlyList<SessionSample> sessions)
    {
        var pressed = sessions.Where(session => session.Latencies.Count + session.Latencies.Missed > 0).ToList();
        return pressed.Count == 0
            ? new NotEnough<Proportion>(0, 1, "presses")
            : OverSessions(
                pressed.Select(session => session.Latencies.Missed).ToArray(),
                pressed.Select(session => session.Latencies.Count + session.Latencies.Missed).ToArray());
    }

    private static Estimate<Proportion> OverSessions(int[] counts, int[] trials)
    {
        var share = SessionShareInterval.Of(counts, trials, Estimates.Level);
        var method = counts.Length == 1 ? MethodName.ClopperPearsonWithinSession
            : counts.Length > 2 && counts.Any(count => count > 0) ? MethodName.ClopperPearsonJoinedWithRootRates
            : share.SessionsDiffer ? MethodName.RootRatesOverSessions
            : MethodName.ClopperPearsonOverAgreeingSessions;
        return Estimates.Share(
            share.Share,
            Math.Min(share.Share, share.Limits.Low),
            Math.Max(share.Share, share.Limits.High),
            method,
            trials.Sum(),
            counts.Length);
    }

    private static int CountAbove(ReadOnlySpan<double> sorted, double threshold)
    {
        int low = 0, high = sorted.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (sorted[middle] > threshold)
            {
                high = middle;
            }
            else
            {
                low = middle + 1;
            }
        }

        return sorted.Length - low;
    }
}
