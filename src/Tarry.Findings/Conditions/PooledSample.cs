using Tarry.Findings.Samples;
using Tarry.Statistics.Descriptives;

namespace Tarry.Findings.Conditions;

/// <summary>All used latencies of a condition in one ascending array, and its misses.</summary>
internal sealed class PooledSample
{
    public PooledSample(IReadOnlyList<SessionSample> all)
    {
        var sessions = all.Where(session => session.Latencies.Count > 0).ToList();
        Sessions = sessions;
        Sorted = new double[Estimates.Trials(sessions)];
        var at = 0;
        foreach (var session in sessions)
        {
            session.Latencies.Sorted.CopyTo(Sorted.AsSpan(at));
            at += session.Latencies.Count;
        }

        Array.Sort(Sorted);
        StepMs = sessions.Select(MatteringStep).DefaultIfEmpty(0).Max();
        Missed = all.Sum(session => session.Latencies.Missed);
    }

    /// <summary>The sessions that have responses.</summary>
    public IReadOnlyList<SessionSample> Sessions { get; }

    public double[] Sorted { get; }

    /// <summary>What trials within a session explain of the variance of session means, ms squared.</summary>
    public double VarianceWithin => Sessions.Average(session =>
        session.Latencies.Count < 2 ? 0 : Moments.Variance(session.Latencies.InOrder) / session.Latencies.Count);

    /// <summary>The coarsest step in which a session's latencies come; 0 where it is too fine to matter.</summary>
    public double StepMs { get; }

    /// <summary>Misses, also those of sessions without any response.</summary>
    public int Missed { get; }

    // A hundredth of the standard deviation is far inside any interval.
    private static double MatteringStep(SessionSample session) =>
        session.Latencies.Count >= 2 && session.ResolutionMs > 0.01 * Moments.StandardDeviation(session.Latencies.InOrder)
            ? session.ResolutionMs
            : 0;
}
