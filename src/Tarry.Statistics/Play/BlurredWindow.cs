namespace Tarry.Statistics.Play;

/// <summary>Compensation for a player whose timing scatters: latencies in narrow bins, convolved with the hit kernel on a grid of compensations.</summary>
/// <remarks>
/// Bins of min(s/8, 0.1 ms); compensations s/8 apart. Over one step of that grid the hit probability is a parabola to four
/// digits more than it has otherwise, so the top is read off the parabola through the highest point and its neighbours.
/// </remarks>
internal sealed class BlurredWindow
{
    private readonly HitKernel kernel;
    private readonly double first;
    private readonly double binWidth;
    private readonly int stride;
    private readonly double[] table;
    private readonly int[] bins;
    private readonly int[] binOf;
    private readonly double[] weightOfBin;
    private readonly int inner;
    private readonly int margin;

    /// <summary>A grid over latencies.</summary>
    /// <param name="values">The latencies, ascending, at least one.</param>
    /// <param name="kernel">Window and player; the player's standard deviation is above 0.</param>
    public BlurredWindow(ReadOnlySpan<double> values, HitKernel kernel)
    {
        this.kernel = kernel;
        first = values[0];
        binWidth = Math.Min(kernel.PlayerSd / 8, 0.1);
        stride = Math.Max(1, (int)(kernel.PlayerSd / 8 / binWidth));
        binOf = new int[values.Length];
        var distinct = new List<int>();
        for (var i = 0; i < values.Length; i++)
        {
            var bin = (int)Math.Round((values[i] - first) / binWidth);
            if (distinct.Count == 0 || distinct[^1] != bin)
            {
                distinct.Add(bin);
            }

            binOf[i] = distinct.Count - 1;
        }

        bins = [.. distinct];
        weightOfBin = new double[bins.Length];
        inner = (bins[^1] / stride) + 3;
        var reach = (int)Math.Ceiling(kernel.Extent / binWidth);
        margin = (reach / stride) + 1;
        table = new double[reach + 1];
        for (var i = 0; i <= reach; i++)
        {
            table[i] = kernel.At(i * binWidth);
        }
    }

    /// <summary>The best compensation with its share, near enough to begin an exact search.</summary>
    public HitOptimum Best(ReadOnlySpan<double> weights)
    {
        return Top(Shares(weights, 0, inner), 0);
    }

    /// <summary>The best share among the compensations that hit at least so often with <paramref name="weights"/>, for other weights.</summary>
    public Func<double[], double> BestAmong(ReadOnlySpan<double> weights, double atLeast)
    {
        var shares = Shares(weights, 0, inner);
        var low = Array.FindIndex(shares, share => share >= atLeast);
        var high = Array.FindLastIndex(shares, share => share >= atLeast);
        (low, high) = (Math.Max(0, low - 1), Math.Min(inner - 1, high + 1));
        return other => Top(Shares(other, low, high - low + 1), low).Share;
    }

    /// <summary>Every compensation that hits at least so often, between the points of the grid by straight lines.</summary>
    public IReadOnlyList<ConfidenceLimits> AtLeast(ReadOnlySpan<double> weights, double share)
    {
        // The best compensation lies among the latencies; a good one may lie beyond them.
        var shares = Shares(weights, -margin, inner + (2 * margin));
        var found = new List<ConfidenceLimits>();
        for (var i = 0; i < shares.Length; i++)
        {
            if (shares[i] < share)
            {
                continue;
            }

            var from = i;
            while (i + 1 < shares.Length && shares[i + 1] >= share)
            {
                i++;
            }

            found.Add(new ConfidenceLimits(
                At(from - margin - (from == 0 ? 0 : (shares[from] - share) / (shares[from] - shares[from - 1]))),
                At(i - margin + (i + 1 == shares.Length ? 0 : (shares[i] - share) / (shares[i] - shares[i + 1])))));
        }

        return found;
    }

    // The grid begins one step below the earliest latency.
    private double At(double candidate) => first + ((candidate - 1) * stride * binWidth);

    private double[] Shares(ReadOnlySpan<double> weights, int from, int count)
    {
        Array.Clear(weightOfBin);
        for (var i = 0; i < binOf.Length; i++)
        {
            weightOfBin[binOf[i]] += weights[i];
        }

        var shares = new double[count];
        for (var candidate = 0; candidate < count; candidate++)
        {
            var place = (from + candidate - 1) * stride;
            var bin = Array.BinarySearch(bins, place - table.Length + 1);
            for (bin = bin < 0 ? ~bin : bin; bin < bins.Length && bins[bin] - place < table.Length; bin++)
            {
                shares[candidate] += weightOfBin[bin] * table[Math.Abs(bins[bin] - place)];
            }
        }

        return shares;
    }

    private HitOptimum Top(double[] shares, int from)
    {
        var top = 0;
        for (var i = 1; i < shares.Length; i++)
        {
            top = shares[i] > shares[top] ? i : top;
        }

        if (top == 0 || top == shares.Length - 1)
        {
            return new HitOptimum(At(from + top), shares[top]);
        }

        var slope = 0.5 * (shares[top + 1] - shares[top - 1]);
        var curvature = shares[top + 1] - (2 * shares[top]) + shares[top - 1];
        return curvature < 0
            ? new HitOptimum(At(from + top - (slope / curvature)), shares[top] - (0.5 * slope * slope / curvature))
            : new HitOptimum(At(from + top), shares[top]);
    }
}
