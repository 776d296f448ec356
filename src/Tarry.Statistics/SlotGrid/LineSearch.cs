namespace Tarry.Statistics.SlotGrid;

/// <summary>Finds the lines of a family of spectra, whose weights may depend on the band that is looked at.</summary>
internal sealed class LineSearch
{
    /// <summary>The lowest and the highest report rate that is looked for.</summary>
    public const double LowestHz = 50;

    /// <inheritdoc cref="LowestHz"/>
    public const double HighestHz = 10_000;

    private const double WidestRatio = 1.4;
    private const int LinesPerBand = 4;

    // Below the threshold by what the grid of frequencies can hide of a line between two of its points.
    private const double WorthAZoom = 0.6;
    private const int MostZooms = 12;

    private readonly double span;
    private readonly double binSeconds;
    private readonly double bandWidth;
    private readonly double highest;

    /// <summary>A search over series of a span.</summary>
    /// <param name="series">How many series.</param>
    /// <param name="span">The longest of them in seconds.</param>
    /// <param name="binSeconds">The bins of the spectra.</param>
    /// <param name="bandWidth">The width of the bands in hertz.</param>
    /// <param name="highest">The highest frequency.</param>
    public LineSearch(int series, double span, double binSeconds, double bandWidth, double highest)
    {
        this.span = span;
        this.binSeconds = binSeconds;
        this.bandWidth = bandWidth;
        this.highest = Math.Min(highest, HighestHz);
        Threshold = LineThreshold.Of(series, span, this.highest - LowestHz);
        Series = series;
    }

    public double Threshold { get; }

    private int Series { get; }

    /// <summary>The lines above the threshold, the tallest first.</summary>
    /// <param name="weights">Gives the series of a band; those that are not usable are left out.</param>
    public List<SpectralLine> Lines(Func<double, double, IReadOnlyList<WeightedTimes>> weights) =>
        Lines(weights, LowestHz, highest);

    /// <summary>The lines of a part of the searched frequencies.</summary>
    public List<SpectralLine> Lines(Func<double, double, IReadOnlyList<WeightedTimes>> weights, double from, double to)
    {
        var spectrum = new BandSpectrum(span, binSeconds);
        var lines = new List<SpectralLine>();
        var end = Math.Min(to, highest);
        for (var low = from; low < end;)
        {
            var high = Math.Min(Math.Min(low * WidestRatio, low + bandWidth), end);
            var parts = weights(low, high).Where(part => part.IsUsable).ToList();
            if (parts.Count > 0)
            {
                var first = (int)Math.Ceiling(low / spectrum.Step);
                var power = new double[(int)Math.Ceiling(high / spectrum.Step) - first];

                // A series with too little in this band counts with what noise would give it.
                Array.Fill(power, 2.0 * (Series - parts.Count));
                foreach (var part in parts)
                {
                    spectrum.Add(part, first, power);
                }

                lines.AddRange(Peaks(parts, power, first, spectrum.Step, 2.0 * (Series - parts.Count)));
            }

            low = high;
        }

        return [.. lines.OrderByDescending(line => line.Power).ThenBy(line => line.Frequency)];
    }

    private List<SpectralLine> Peaks(List<WeightedTimes> parts, double[] power, int first, double step, double added)
    {
        var lines = new List<SpectralLine>();
        var apart = (int)Math.Ceiling(4 / span / step);
        for (var zooms = 0; zooms < MostZooms && lines.Count < LinesPerBand; zooms++)
        {
            var top = 0;
            for (var i = 1; i < power.Length; i++)
            {
                top = power[i] > power[top] ? i : top;
            }

            if (power[top] < WorthAZoom * Threshold)
            {
                break;
            }

            var (frequency, exact) = LinePower.Zoom(parts, (first + top) * step, span);
            if (exact + added > Threshold)
            {
                lines.Add(new SpectralLine(frequency, exact + added));
            }

            Array.Clear(power, Math.Max(0, top - apart), Math.Min(power.Length, top + apart + 1) - Math.Max(0, top - apart));
        }

        return lines;
    }
}
