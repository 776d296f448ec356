namespace Tarry.Statistics.SlotGrid;

/// <summary>How slowly slots and frames beat.</summary>
/// <remarks>
/// Near T1/T2 = p/q the slots meet q places of the frame interval, T2/q apart, and these creep through it in 1/|q/T2 - p/T1|.
/// A session that sees under two of these beats holds up to T2/(2q) of where it happened to begin.
/// </remarks>
/// <param name="Seconds">The length of a beat; infinite where the ratio is exact.</param>
/// <param name="Places">q.</param>
/// <param name="WorstBiasMs">T2/(2q): how far a mean can be off where less than a beat is seen.</param>
public readonly record struct GridBeat(double Seconds, int Places, double WorstBiasMs)
{
    private const int MostPlaces = 12;
    private const double FewestBeats = 2;

    /// <summary>The beat with the fewest places of which a session sees under two; null where every one is short.</summary>
    /// <param name="reportMs">The report interval, above 0.</param>
    /// <param name="frameMs">The frame interval, above 0.</param>
    /// <param name="sessionSeconds">How long the session is.</param>
    public static GridBeat? TooSlow(double reportMs, double frameMs, double sessionSeconds)
    {
        Argument.RequirePositive(reportMs, nameof(reportMs));
        Argument.RequirePositive(frameMs, nameof(frameMs));
        for (var places = 1; places <= MostPlaces; places++)
        {
            var reports = Math.Max(1, Math.Round(places * reportMs / frameMs));
            var seconds = 1 / Math.Abs((places * 1000 / frameMs) - (reports * 1000 / reportMs));
            if (sessionSeconds < FewestBeats * seconds)
            {
                return new GridBeat(seconds, places, frameMs / (2 * places));
            }
        }

        return null;
    }
}
