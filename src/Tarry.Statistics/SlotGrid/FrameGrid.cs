namespace Tarry.Statistics.SlotGrid;

/// <summary>The grid of frames that the arrivals of one series bunch on: which frame showed each response.</summary>
internal sealed class FrameGrid
{
    /// <summary>The least |mean phasor| of arrivals for the frame of a response to be trusted.</summary>
    public const double LeastPhasor = 0.6;

    private FrameGrid(PressSeries series, double interval, double phase, double phasor)
    {
        (Series, Interval, Phase, Phasor) = (series, interval, phase, phasor);
        var n = series.Count;
        var residuals = new double[n];
        for (var i = 0; i < n; i++)
        {
            var cycles = (series.Arrivals[i] - phase) / interval;
            residuals[i] = cycles - Math.Round(cycles);
        }

        double[]? wander = null;
        if (FrameTracking.Of(residuals) is { } tracked)
        {
            (wander, Phasor) = tracked;
        }

        Wanders = wander is not null;
        Waits = new double[n];
        CentredIndex = new double[n];
        var middle = Math.Round((series.Middle - phase) / interval);
        for (var i = 0; i < n; i++)
        {
            var offset = phase + ((wander?[i] ?? 0) * interval);
            var index = Math.Round((series.Arrivals[i] - offset) / interval);
            Waits[i] = (index * interval) + offset - series.Presses[i];
            CentredIndex[i] = index - middle;
        }

        SortedWaits = (double[])Waits.Clone();
        Array.Sort(SortedWaits);
    }

    public PressSeries Series { get; }

    /// <summary>The frame interval in seconds.</summary>
    public double Interval { get; }

    /// <summary>When a frame shows, in seconds from the first press.</summary>
    public double Phase { get; }

    /// <summary>Whether the phase of the frames had to be followed through the series.</summary>
    public bool Wanders { get; }

    /// <summary>|mean e^(2 pi i A/T2)|, or its agreement with the phase followed: 1 without noise after the frame.</summary>
    public double Phasor { get; }

    /// <summary>From each press to the frame that showed it: the noise after the frame is gone.</summary>
    public double[] Waits { get; }

    /// <summary>The number of that frame, from the middle of the series.</summary>
    public double[] CentredIndex { get; }

    public double[] SortedWaits { get; }

    /// <summary>The grid near a frequency, refined on the series' own arrivals.</summary>
    public static FrameGrid Near(PressSeries series, double frequency)
    {
        var arrivals = Arrivals(series);
        var (refined, _) = LinePower.Zoom([arrivals], frequency, series.Span * 1.02, cycles: 2);
        var (re, im) = LinePower.Sum(arrivals, refined, arrivals.Mean);
        var interval = 1 / refined;
        return new FrameGrid(
            series,
            interval,
            arrivals.Mean + (Math.Atan2(-im, re) / (2 * Math.PI) * interval),
            Math.Sqrt((re * re) + (im * im)) / series.Count);
    }

    public static WeightedTimes Arrivals(PressSeries series)
    {
        var ones = new double[series.Count];
        Array.Fill(ones, 1);
        return new WeightedTimes(series.Arrivals, ones, ones.Length);
    }

    /// <summary>The middle of the fullest window of waits as wide as the longer of slot and frame interval.</summary>
    public double Centre(double slotInterval)
    {
        var width = Math.Max(slotInterval, Interval);
        return FullestWindow.OfSorted(SortedWaits, width).Start + (width / 2);
    }
}
