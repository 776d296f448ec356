using Tarry.Findings.Samples;
using Tarry.Statistics.Drift;
using Tarry.Statistics.Quantiles;

namespace Tarry.Findings.Quality;

/// <summary>Whether the presses of a session fell at random against the periods of the chain.</summary>
/// <remarks>
/// Press intervals of base + Uniform(0, 50 ms or more) are asked for; narrower ones aliased in simulation
/// (100 ms with 2 ms of jitter gave a confident wrong period). Common practice, no published source.
/// </remarks>
internal static class PressTiming
{
    private const int FewestPresses = 50;
    private const double NarrowestRangeMs = 40;
    private const double LockedP = 0.01;
    private const double LockedResultant = 0.1;

    public static IEnumerable<Caution> Lattice(SessionSample session)
    {
        var presses = session.PressTimesMs;
        if (presses.Length < FewestPresses)
        {
            yield break;
        }

        var intervals = new double[presses.Length - 1];
        for (var i = 0; i < intervals.Length; i++)
        {
            intervals[i] = presses[i + 1] - presses[i];
        }

        Array.Sort(intervals);
        var range = SampleQuantile.Of(intervals, 0.99)!.Value - SampleQuantile.Of(intervals, 0.01)!.Value;
        if (range < NarrowestRangeMs)
        {
            yield return new Caution(CautionKind.PressLattice, session.Key.ToString(), new Dictionary<string, double> { ["range_ms"] = range });
        }
    }

    /// <summary>How strongly the presses of a session crowd around one phase of a period.</summary>
    public static RayleighTest Lock(SessionSample session, double periodMs) =>
        RayleighTest.Of(Array.ConvertAll(session.PressTimesMs, press => press / periodMs % 1));

    /// <summary>Whether a session has the presses that a phase is worth.</summary>
    public static bool HasEnough(SessionSample session) => session.PressTimesMs.Length >= FewestPresses;

    /// <summary>The caution of presses that keep step with a period.</summary>
    /// <param name="session">The session.</param>
    /// <param name="periodMs">The period.</param>
    /// <param name="test">What <see cref="Lock"/> said.</param>
    /// <param name="adjustedP">Its p by Holm over the sessions of the study.</param>
    public static Caution? LockCaution(SessionSample session, double periodMs, RayleighTest test, double adjustedP) =>
        adjustedP < LockedP && test.ResultantLength > LockedResultant
            ? new Caution(CautionKind.PhaseLocked, session.Key.ToString(), new Dictionary<string, double>
            {
                ["period_ms"] = periodMs,
                ["worst_bias_ms"] = periodMs * test.ResultantLength / Math.PI,
            })
            : null;
}
