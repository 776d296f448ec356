using Tarry.Findings.Samples;
using Tarry.Metrology;

namespace Tarry.Findings.Conditions;

/// <summary>Makes typed 95 % estimates from milliseconds.</summary>
internal static class Estimates
{
    public const double Level = 0.95;

    public static Estimate<Latency> Latency(double value, double low, double high, string method, IReadOnlyList<SessionSample> sessions) =>
        new(
            Metrology.Latency.FromMilliseconds(value),
            new(Metrology.Latency.FromMilliseconds(low), Metrology.Latency.FromMilliseconds(high)),
            Level,
            method,
            Trials(sessions),
            sessions.Count);

    public static Estimate<LatencyDifference> Difference(double value, double low, double high, string method, int trials, int sessions) =>
        new(
            LatencyDifference.FromMilliseconds(value),
            new(LatencyDifference.FromMilliseconds(low), LatencyDifference.FromMilliseconds(high)),
            Level,
            method,
            trials,
            sessions);

    public static Estimate<LatencyDifference> Difference(double value, double low, double high, string method, IReadOnlyList<SessionSample> sessions) =>
        Difference(value, low, high, method, Trials(sessions), sessions.Count);

    public static Estimate<Proportion> Share(double value, double low, double high, string method, int trials, int sessions) =>
        new(
            Proportion.FromFraction(value),
            new(Proportion.FromFraction(low), Proportion.FromFraction(high)),
            Level,
            method,
            trials,
            sessions);

    public static int Trials(IReadOnlyList<SessionSample> sessions) => sessions.Sum(session => session.Latencies.Count);
}
