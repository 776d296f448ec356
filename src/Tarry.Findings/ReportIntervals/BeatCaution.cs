using Tarry.Findings.Quality;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.ReportIntervals;

/// <summary>Whether report and frame interval beat so slowly that a session sees too little of it, and which frame cap would mend it.</summary>
internal static class BeatCaution
{
    private const double OffTheRatio = 20;

    public static Caution? Of(string session, double reportMs, double frameMs, double sessionSeconds) =>
        GridBeat.TooSlow(reportMs, frameMs, sessionSeconds) is { } beat
            ? new Caution(CautionKind.Beat, session, new Dictionary<string, double>
            {
                // An exact ratio never comes round; JSON has no infinity.
                ["beat_s"] = Math.Min(beat.Seconds, 1e9),
                ["session_s"] = sessionSeconds,
                ["worst_bias_ms"] = beat.WorstBiasMs,
                ["frame_cap_hz"] = CapOffTheRatio(reportMs, frameMs, sessionSeconds),
            })
            : null;

    // The next lower cap, in whole frames a second, at which a twentieth of the session sees two beats.
    private static double CapOffTheRatio(double reportMs, double frameMs, double sessionSeconds)
    {
        var cap = Math.Floor(1000 / frameMs / 1.02);
        while (cap > 10 && GridBeat.TooSlow(reportMs, 1000 / cap, sessionSeconds / OffTheRatio) is not null)
        {
            cap--;
        }

        return cap;
    }
}
