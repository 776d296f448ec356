using Tarry.Findings.Samples;
using Tarry.Statistics.Quantiles;

namespace Tarry.Findings.Quality;

/// <summary>Whether the intervals between presses of a session vary enough.</summary>
/// <remarks>
/// Press intervals of base + Uniform(0, 50 ms or more) are asked for; narrower ones aliased in simulation
/// (100 ms with 2 ms of jitter gave a confident wrong period). Common practice, no published source.
/// </remarks>
internal static class PressTiming
{
    /// <summary>Intervals within less than this of each other are a lattice.</summary>
    public const double NarrowestRangeMs = 40;

    private const int FewestPresses = 50;

    public static IEnumerable<Caution> Cautions(SessionSample session)
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
}
