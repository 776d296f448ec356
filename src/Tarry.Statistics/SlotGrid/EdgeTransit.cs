namespace Tarry.Statistics.SlotGrid;

/// <summary>
/// The edge test: for each press and each frame edge that follows it by d within the candidate interval, whether the response came
/// on a later frame, that is, whether no slot fell in between.
/// </summary>
/// <remarks>
/// As a function of time that answer repeats with the slot interval T; its fundamental has the phase of t + d/2 and weight
/// sin(pi d/T). What it is on average at each d, slots or not, is taken off. Our own construction; accuracy by simulation in
/// <c>docs/methods/slot-grid.md</c>.
/// </remarks>
internal static class EdgeTransit
{
    private const int DistanceBins = 24;

    /// <summary>Weighted times whose spectrum has a line at the report rate.</summary>
    /// <param name="grid">The frames.</param>
    /// <param name="longest">How long after a press edges are looked at: the longest report interval of the band.</param>
    /// <param name="slot">The report interval that the middle of the waits is taken for.</param>
    public static WeightedTimes Of(FrameGrid grid, double longest, double slot) => Of(grid, longest, slot, grid.Centre(slot));

    /// <inheritdoc cref="Of(FrameGrid, double, double)"/>
    public static WeightedTimes Of(FrameGrid grid, double longest, double slot, double centre)
    {
        var frame = grid.Interval;
        var origin = centre - ((slot + frame) / 2);
        var reach = ((longest + frame) * 0.6) + 2e-4;
        var most = grid.Waits.Length * ((int)(longest / frame) + 2);
        var (times, distances, later) = (new double[most], new double[most], new bool[most]);
        var count = 0;
        for (var i = 0; i < grid.Waits.Length; i++)
        {
            if (!(Math.Abs(grid.Waits[i] - centre) < reach))
            {
                continue;
            }

            var wait = grid.Waits[i] - origin;
            for (var edge = (int)Math.Floor((wait - longest) / frame) + 1; ; edge++)
            {
                var distance = wait - (edge * frame);
                if (!(distance > 0))
                {
                    break;
                }

                if (distance < longest)
                {
                    times[count] = grid.Series.Presses[i] + (distance / 2);
                    distances[count] = distance;
                    later[count++] = edge >= 1;
                }
            }
        }

        return Weighted(times, distances, later, count, longest);
    }

    private static WeightedTimes Weighted(double[] times, double[] distances, bool[] later, int count, double longest)
    {
        Span<double> sums = stackalloc double[DistanceBins];
        Span<double> sizes = stackalloc double[DistanceBins];
        sums.Clear();
        sizes.Clear();
        for (var i = 0; i < count; i++)
        {
            var bin = Bin(distances[i], longest);
            sums[bin] += later[i] ? 1 : 0;
            sizes[bin]++;
        }

        for (var i = 0; i < count; i++)
        {
            var bin = Bin(distances[i], longest);
            distances[i] = ((later[i] ? 1 : 0) - (sums[bin] / sizes[bin])) * Math.Sin(Math.PI * distances[i] / longest);
        }

        return new WeightedTimes(times, distances, count);
    }

    private static int Bin(double distance, double longest) => Math.Min((int)(DistanceBins * distance / longest), DistanceBins - 1);
}
