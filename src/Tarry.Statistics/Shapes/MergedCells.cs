namespace Tarry.Statistics.Shapes;

/// <summary>Bins, the empty ones too, merged into cells of about one expected count: what Pearson's chi-squared is taken over.</summary>
internal sealed class MergedCells : ILatencyCells
{
    private readonly double[] edges;
    private readonly int[] cells;
    private readonly double[] weights;
    private readonly double[] counts;
    private readonly double[] tails;
    private readonly LateRange late;

    private MergedCells(double[] edges, int[] cells, double[] weights, double[] counts, LateRange late)
    {
        (this.edges, this.cells, this.weights, this.counts, this.late) = (edges, cells, weights, counts, late);
        tails = new double[edges.Length];
    }

    public ReadOnlySpan<double> Counts => counts;

    /// <summary>Cells for the sessions of a fit.</summary>
    /// <param name="sessions">The sessions.</param>
    /// <param name="fit">The fit: its places are taken off, and cells are about equally probable under it.</param>
    /// <param name="widthMs">The width of bins.</param>
    /// <param name="wanted">How many cells.</param>
    public static MergedCells Of(IReadOnlyList<SessionLatencies> sessions, FittedShape fit, double widthMs, int wanted)
    {
        var total = sessions.Sum(session => session.SortedMs.Length);
        var from = fit.Shape.Quantile(1e-4);
        var to = fit.Shape.Quantile(1 - 1e-4);
        List<double> edges = [];
        List<double> weights = [];
        List<double> observed = [];
        var coarse = Enumerable.Range(0, sessions.Count).Where(j => BinnedLatencies.IsCoarse(sessions[j])).ToList();
        foreach (var j in coarse)
        {
            var (origin, width) = BinnedLatencies.Lattice(sessions[j], widthMs);
            Append([j], origin - fit.Places[j], width);
        }

        var fine = Enumerable.Range(0, sessions.Count).Except(coarse).ToArray();
        if (fine.Length > 0)
        {
            Append(fine, 0, widthMs);
        }

        var cells = Assign(fit, edges, [.. weights], wanted);
        var counts = new double[cells.Max() + 1];
        for (var i = 0; i < observed.Count; i++)
        {
            counts[cells[i]] += observed[i];
        }

        return new MergedCells([.. edges], cells, [.. weights], counts, fit.Late);

        // A run of bins from below everything to above everything; its last edge begins the next run, with weight 0 between.
        void Append(int[] group, double origin, double width)
        {
            var first = (long)Math.Floor((from - origin) / width);
            var bins = (int)((long)Math.Ceiling((to - origin) / width) - first);
            var found = new double[bins + 2];
            foreach (var j in group)
            {
                foreach (var value in sessions[j].SortedMs)
                {
                    var bin = (long)Math.Floor((value - fit.Places[j] - origin) / width) - first;
                    found[Math.Clamp(bin + 1, 0, bins + 1)]++;
                }
            }

            var weight = group.Sum(j => sessions[j].SortedMs.Length) / (double)total;
            edges.Add(double.NegativeInfinity);
            for (var i = 0; i <= bins; i++)
            {
                edges.Add(origin + ((first + i) * width));
            }

            edges.Add(double.PositiveInfinity);
            observed.AddRange(found);
            observed.Add(0);
            weights.AddRange(Enumerable.Repeat(weight, bins + 2));
            weights.Add(0);
        }
    }

    /// <inheritdoc/>
    public void Probabilities(LatencyShape shape, double lateShare, Span<double> probabilities)
    {
        probabilities.Clear();
        for (var i = 0; i < edges.Length; i++)
        {
            tails[i] = double.IsInfinity(edges[i]) ? 0 : shape.SignedTail(edges[i]);
        }

        for (var i = 0; i < cells.Length; i++)
        {
            probabilities[cells[i]] += Bin(edges, tails, weights, late, i, shape.Mean, lateShare);
        }
    }

    private static int[] Assign(FittedShape fit, List<double> edges, double[] weights, int wanted)
    {
        var edgeArray = edges.ToArray();
        var tails = Array.ConvertAll(edgeArray, edge => double.IsInfinity(edge) ? 0 : fit.Shape.SignedTail(edge));
        var order = Enumerable.Range(0, weights.Length)
            .OrderBy(i => i + 1 < edgeArray.Length ? Middle(edgeArray[i], edgeArray[i + 1]) : double.PositiveInfinity)
            .ToArray();
        var cells = new int[weights.Length];
        var (cell, gathered, done) = (0, 0.0, 0.0);
        foreach (var i in order)
        {
            var expected = Bin(edgeArray, tails, weights, fit.Late, i, fit.Shape.Mean, fit.LateShare);
            if (gathered >= 1.0 / wanted && 1 - done >= 0.5 / wanted)
            {
                cell++;
                gathered = 0;
            }

            cells[i] = cell;
            gathered += expected;
            done += expected;
        }

        return cells;
    }

    private static double Middle(double left, double right) =>
        double.IsNegativeInfinity(left) ? double.NegativeInfinity : double.IsPositiveInfinity(right) ? double.PositiveInfinity : 0.5 * (left + right);

    private static double Bin(double[] edges, double[] tails, double[] weights, LateRange late, int i, double middle, double lateShare)
    {
        if (weights[i] == 0)
        {
            return 0;
        }

        var inside = tails[i + 1] - tails[i] + (edges[i] <= middle && edges[i + 1] > middle ? 1 : 0);
        return weights[i] * (((1 - lateShare) * inside) + (lateShare * late.Share(edges[i], edges[i + 1])));
    }
}
