using Tarry.Findings.Quality;

namespace Tarry.Findings.ReportIntervals;

/// <summary>Whether report and frame interval beat so slowly that a session sees too little of it.</summary>
/// <remarks>
/// Near T1/T2 = p/q the slots meet q places of the frame interval, T2/q apart, and these creep through it in 1/|q/T2 - p/T1|.
/// Where a session sees under two of these beats, its mean holds up to T2/(2q) of where it happened to begin.
/// </remarks>
internal static class BeatCaution
{
    private const int MostPlaces = 12;
    private const double FewestBeats = 2;
    private const double SmallestBiasMs = 0.1;
    private const double OffTheRatio = 20;

    public static Caution? Of(string session, double reportMs, double frameMs, double sessionSeconds)
    {
        for (var places = 1; places <= MostPlaces; places++)
        {
            var beat = BeatSeconds(reportMs, frameMs, places);
            var bias = frameMs / (2 * places);
            if (sessionSeconds < FewestBeats * beat && bias >= SmallestBiasMs)
            {
                return new Caution(CautionKind.Beat, session, new Dictionary<string, double>
                {
                    ["beat_s"] = Math.Min(beat, 1e9),
                    ["session_s"] = sessionSeconds,
                    ["worst_bias_ms"] = bias,
                    ["frame_cap_hz"] = CapOffTheRatio(reportMs, frameMs, sessionSeconds),
                });
            }
        }

        return null;
    }

    private static double BeatSeconds(double reportMs, double frameMs, int places)
    {
        var reports = Math.Max(1, Math.Round(places * reportMs / frameMs));
        return 1 / Math.Abs((places * 1000 / frameMs) - (reports * 1000 / reportMs));
    }

    // The next lower cap, in whole frames a second, at which every beat is short.
    private static double CapOffTheRatio(double reportMs, double frameMs, double sessionSeconds)
    {
        var cap = Math.Floor(1000 / frameMs / 1.02);
        while (cap > 10 && Enumerable.Range(1, MostPlaces).Any(places => sessionSeconds < OffTheRatio * BeatSeconds(reportMs, 1000 / cap, places)))
        {
            cap--;
        }

        return cap;
    }
}
