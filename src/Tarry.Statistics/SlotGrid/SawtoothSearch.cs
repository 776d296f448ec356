using Tarry.Statistics.Quantiles;

namespace Tarry.Statistics.SlotGrid;

/// <summary>The report interval by the sawtooth that latencies, waits for the next slot, draw over the press times.</summary>
/// <remarks>Later noise only adds variance. The tallest line is the fundamental: harmonics of a sawtooth fall as 1/k^2.</remarks>
internal sealed class SawtoothSearch
{
    private const double BinSeconds = 1e-3;
    private const double BandWidthHz = 900;

    // A single grid has its tallest line lowest: what is above is looked at only where nothing is seen below.
    private const double FirstToHz = 1400;

    // Late responses would hide the sawtooth; they are cut, not dropped.
    private const double LowCut = 0.002;
    private const double HighCut = 0.97;

    // n x 0.61 x (T^2/12)/var L above 20 shows a line; half of the T that just does is looked at all the same.
    private const double ShownAt = 20;

    private const int MostLines = 24;

    private readonly IReadOnlyList<PressSeries> series;
    private readonly double span;
    private readonly List<WeightedTimes> parts;
    private readonly LineSearch search;

    public SawtoothSearch(IReadOnlyList<PressSeries> series)
    {
        this.series = series;
        span = series.Max(one => one.Span) * 1.02;
        parts = [.. series.Select(Weights)];
        Trials = series.Sum(one => one.Count);
        var variance = parts.Sum(part => part.SquaredWeights) / Trials;
        Smallest = Math.Sqrt(12 * ShownAt * variance / (0.61 * Trials));
        search = new LineSearch(series.Count, span, BinSeconds, BandWidthHz, 2 / Smallest);
    }

    public int Trials { get; }

    /// <summary>The smallest interval in seconds whose sawtooth would be told from the noise.</summary>
    public double Smallest { get; }

    public double Threshold => search.Threshold;

    public double Resolution => 1 / span;

    /// <summary>The lines, the tallest first.</summary>
    public List<SpectralLine> Lines()
    {
        var lines = Standing(search.Lines((_, _) => parts, LineSearch.LowestHz, FirstToHz));
        return lines.Count > 0 ? lines : Standing(search.Lines((_, _) => parts, FirstToHz, LineSearch.HighestHz));
    }

    // Frames that wander raise humps: a line stands above what is about it, too.
    private List<SpectralLine> Standing(List<SpectralLine> lines)
    {
        var noise = 2.0 * series.Count;
        return [.. lines.Take(MostLines).Where(line => line.Power * noise / Math.Max(noise, LinePower.About(parts, line.Frequency, span)) > Threshold)];
    }

    /// <summary>The report interval of a line.</summary>
    public ReportIntervalFound Found(SpectralLine line)
    {
        var (frequency, power) = LinePower.Zoom(parts, line.Frequency, span);
        var half = FrequencyUncertainty.HalfWidth(parts, frequency);
        var interval = 1000 / frequency;
        return new ReportIntervalFound(
            Trials,
            null,
            interval,
            interval * (1 - half),
            interval * (1 + half),
            new SlotGridEvidence(SlotGridKind.Sawtooth, power / Threshold, null, null, null),
            [.. series.Select((one, i) => new SlotSeries(one.Sitting, 1000 * SlotPhase(one, parts[i], frequency), null, null, new FixedDelayRefused(FixedDelayReason.NoFrameGrid, null, null, one.Count)))]);
    }

    private static WeightedTimes Weights(PressSeries one)
    {
        var sorted = (double[])one.Latencies.Clone();
        Array.Sort(sorted);
        var low = SampleQuantile.Of(sorted, LowCut)!.Value;
        var high = SampleQuantile.Of(sorted, HighCut)!.Value;
        var weights = Array.ConvertAll(one.Latencies, latency => Math.Clamp(latency, low, high + (0.1 * (high - low))));
        var mean = weights.Average();
        for (var i = 0; i < weights.Length; i++)
        {
            weights[i] -= mean;
        }

        return new WeightedTimes(one.Presses, weights, weights.Length);
    }

    // The wait for a slot at phase p is (p - t) mod T: its fundamental leads the slot by a quarter.
    private static double SlotPhase(PressSeries one, WeightedTimes part, double frequency)
    {
        var (re, im) = LinePower.Sum(part, frequency, one.Middle);
        return one.Middle - (((Math.Atan2(im, re) / (2 * Math.PI)) + 0.25) / frequency);
    }
}
