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
    private const double LockedP = 0.001;
    private const double LockedResultant = 0.1;

    public static IEnumerable<Caution> Cautions(SessionSample session, double? nominalReportHz)
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

        if (nominalReportHz is not { } rate)
        {
            yield break;
        }

        var period = 1000 / rate;
        var phases = Array.ConvertAll(presses, press => press / period % 1);
        var rayleigh = RayleighTest.Of(phases);
        if (rayleigh.P < LockedP && rayleigh.ResultantLength > LockedResultant)
        {
            yield return new Caution(CautionKind.PhaseLocked, session.Key.ToString(), new Dictionary<string, double>
            {
                ["period_ms"] = period,
                ["worst_bias_ms"] = period * rayleigh.ResultantLength / Math.PI,
            });
        }
    }
}
