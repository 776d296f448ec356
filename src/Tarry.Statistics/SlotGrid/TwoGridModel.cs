namespace Tarry.Statistics.SlotGrid;

/// <summary>Slots in front of frames: a press waits for the next slot, then for the next frame after a fixed delay.</summary>
/// <remarks>
/// With S the first slot after the press, the frame that shows it stands F..F + T2 after S for one fixed delay F. The presses for
/// which that holds are the fullest window of width T2 of (frame - S).
/// </remarks>
internal sealed class TwoGridModel(FrameGrid grid)
{
    private const int Points = 7;
    private const double Shrink = 0.6;
    private readonly double[] values = new double[grid.Waits.Length];
    private readonly WindowCount window = new(grid.Waits.Length);

    public FrameGrid Grid => grid;

    /// <summary>Without slots: the waits themselves lie in a window of one frame.</summary>
    public FullestWindow WithoutSlots => FullestWindow.OfSorted(grid.SortedWaits, grid.Interval);

    /// <summary>How many presses a grid explains.</summary>
    public FullestWindow Explained(in TwoGridPoint point, double centre)
    {
        FromSlots(point);
        var reach = 1.5 * (point.Interval + grid.Interval);
        return window.Of(values, grid.Interval + point.FrameCorrection, centre - reach - point.Interval, centre + reach);
    }

    /// <summary>The fixed delay of a fit.</summary>
    public FixedDelayMeasured FixedDelay(in TwoGridFit fit)
    {
        FromSlots(fit.Point);
        var residuals = new double[values.Length];
        for (var i = 0; i < residuals.Length; i++)
        {
            residuals[i] = grid.Series.Latencies[i] - grid.Waits[i] - (fit.Point.FrameCorrection * grid.CentredIndex[i]);
        }

        return FixedDelayFit.Of(values, residuals, grid.Interval + fit.Point.FrameCorrection, fit.FixedDelay);
    }

    // From the slot of each press to its frame.
    private void FromSlots(in TwoGridPoint point)
    {
        var (waits, presses, index) = (grid.Waits, grid.Series.Presses, grid.CentredIndex);
        var rate = 1 / point.Interval;
        for (var i = 0; i < values.Length; i++)
        {
            var since = presses[i] - point.Phase;
            values[i] = waits[i] + (point.FrameCorrection * index[i]) + since - (Math.Ceiling(since * rate) * point.Interval);
        }
    }

    /// <summary>The grid of an interval by the phase of its line alone, tried a little to either side.</summary>
    public TwoGridFit ByPhase(double frequency)
    {
        const double aside = 0.08;
        var (start, centre) = FromLine(frequency);
        var best = Explained(start, centre);
        foreach (var shift in new[] { -aside, aside })
        {
            var other = Explained(start with { Phase = start.Phase + (shift * start.Interval) }, centre);
            best = other.Count > best.Count ? other : best;
        }

        return new TwoGridFit(best.Count, best.Start, start);
    }

    /// <summary>The grid near an interval that explains most presses, by coordinate search.</summary>
    /// <param name="frequency">One over the interval.</param>
    /// <param name="passes">How many times round the three coordinates, each time with smaller steps.</param>
    /// <param name="thorough">Whether to start from three frame intervals.</param>
    public TwoGridFit Polished(double frequency, int passes, bool thorough)
    {
        var (start, centre) = FromLine(frequency);
        var span = grid.Series.Span;
        var best = (Window: Explained(start, centre), Point: start);
        foreach (var shift in thorough ? new[] { -1, 0, 1 } : [0])
        {
            var from = start with { FrameCorrection = shift * 3e-5 * grid.Interval / span };
            var found = Descend(from, centre, passes, span);
            best = found.Window.Count > best.Window.Count ? found : best;
        }

        return new TwoGridFit(best.Window.Count, best.Window.Start, best.Point);
    }

    private (TwoGridPoint Start, double Centre) FromLine(double frequency)
    {
        var interval = 1 / frequency;
        var centre = grid.Centre(interval);
        var line = EdgeTransit.Of(grid, interval, interval, centre);

        // The slot nearest to the middle of the series stands for the phase, so that a change of interval leaves it where it is.
        var middle = grid.Series.Middle;
        var (re, im) = LinePower.Sum(line, frequency, middle);
        return (new TwoGridPoint(interval, middle - (Math.Atan2(im, re) / (2 * Math.PI * frequency)) - (interval / 2), 0), centre);
    }

    private (FullestWindow Window, TwoGridPoint Point) Descend(TwoGridPoint point, double centre, int passes, double span)
    {
        var best = Explained(point, centre);
        var steps = new TwoGridPoint(0.15 * point.Interval * point.Interval / span, 0.12 * point.Interval, 2e-5 * grid.Interval / span);
        Span<FullestWindow> windows = stackalloc FullestWindow[Points];
        Span<TwoGridPoint> points = stackalloc TwoGridPoint[Points];
        for (var pass = 0; pass < passes; pass++)
        {
            foreach (var coordinate in (ReadOnlySpan<int>)[1, 0, 2, 1])
            {
                var most = 0;
                for (var k = 0; k < Points; k++)
                {
                    var shift = ((2.0 * k) / (Points - 1)) - 1;
                    points[k] = coordinate switch
                    {
                        0 => point with { Interval = point.Interval + (shift * steps.Interval) },
                        1 => point with { Phase = point.Phase + (shift * steps.Phase) },
                        _ => point with { FrameCorrection = point.FrameCorrection + (shift * steps.FrameCorrection) },
                    };
                    windows[k] = Explained(points[k], centre);
                    most = Math.Max(most, windows[k].Count);
                }

                if (most < best.Count)
                {
                    continue;
                }

                var middle = MiddleOfTies(windows, most);
                (best, point) = (windows[middle], points[middle]);
            }

            steps = new TwoGridPoint(steps.Interval * Shrink, steps.Phase * Shrink, steps.FrameCorrection * Shrink);
        }

        return (best, point);
    }

    private static int MiddleOfTies(ReadOnlySpan<FullestWindow> windows, int most)
    {
        var ties = 0;
        foreach (var window in windows)
        {
            ties += window.Count == most ? 1 : 0;
        }

        var skip = ties / 2;
        for (var k = 0; ; k++)
        {
            if (windows[k].Count == most && skip-- == 0)
            {
                return k;
            }
        }
    }
}
