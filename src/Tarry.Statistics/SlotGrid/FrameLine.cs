namespace Tarry.Statistics.SlotGrid;

/// <summary>The last grid of the chain, from the arrivals of one series: the lowest strong line.</summary>
internal static class FrameLine
{
    private const double BinSeconds = 1e-3;
    private const double BandWidthHz = 900;

    // Frames slower than LineSearch.LowestHz or faster than this are not looked for.
    private const double HighestFrameHz = 2100;
    private const double StrongAgainstTallest = 0.15;

    // P = 2 n R^2, so R = 0.22.
    private const double LeastPowerPerTrial = 0.1;
    private const double HumpPower = 0.25;
    private const double HumpHz = 5;

    public static LineSearch Search(PressSeries series) =>
        new(1, series.Span * 1.02, BinSeconds, BandWidthHz, HighestFrameHz);

    /// <summary>The frequency of the frames; null where there is no line, or where frames wander and make a hump instead.</summary>
    /// <param name="series">The series.</param>
    /// <param name="lines">The lines of its arrivals, the tallest first.</param>
    /// <param name="isOwn">Whether a frequency belongs to the device's own slots.</param>
    public static double? Of(PressSeries series, IReadOnlyList<SpectralLine> lines, Func<double, bool> isOwn)
    {
        if (lines.Count == 0)
        {
            return null;
        }

        var lowest = lines.Where(line => line.Power > StrongAgainstTallest * lines[0].Power).MinBy(line => line.Frequency);
        var apart = 4 / (series.Span * 1.02);
        var wanders = lines.Any(line =>
            Math.Abs(line.Frequency - lowest.Frequency) > apart
            && Math.Abs(line.Frequency - lowest.Frequency) < HumpHz
            && line.Power > HumpPower * lowest.Power);
        return lowest.Power < LeastPowerPerTrial * series.Count || wanders || isOwn(lowest.Frequency) ? null : lowest.Frequency;
    }
}
