namespace Tarry.Statistics.SlotGrid;

/// <summary>The fullest window of values that are not sorted, in linear time: bins find the place, the values about its two ends decide.</summary>
internal sealed class WindowCount
{
    private const int BinsPerWindow = 256;

    // The window may start one bin before or after the best place by bins.
    private const int Slack = 1;

    private readonly int[] bins;
    private readonly double[] left;
    private readonly double[] right;
    private int[] counts = new int[4096];

    public WindowCount(int size)
    {
        bins = new int[size];
        left = new double[size];
        right = new double[size];
    }

    /// <summary>The fullest window among the values of a range.</summary>
    /// <param name="values">The values.</param>
    /// <param name="width">The width of the window.</param>
    /// <param name="low">The low end of the range that is looked at; values outside count as not in the window.</param>
    /// <param name="high">The high end.</param>
    public FullestWindow Of(double[] values, double width, double low, double high)
    {
        var perBin = BinsPerWindow / width;
        var size = (int)Math.Ceiling((high - low) * perBin) + BinsPerWindow + 8;
        if (counts.Length < size)
        {
            counts = new int[2 * size];
        }

        Array.Clear(counts, 0, size);
        var limit = (high - low) * perBin;
        for (var i = 0; i < values.Length; i++)
        {
            var place = (values[i] - low) * perBin;
            var bin = place >= 0 && place < limit ? (int)place + 2 : -1;
            bins[i] = bin;
            if (bin >= 0)
            {
                counts[bin]++;
            }
        }

        var (sum, best, at) = (0, 0, 0);
        for (var b = 0; b < size; b++)
        {
            sum += counts[b];
            sum -= b >= BinsPerWindow ? counts[b - BinsPerWindow] : 0;
            if (sum > best)
            {
                (best, at) = (sum, Math.Max(0, b - BinsPerWindow + 1));
            }
        }

        // Where values leave the window room to move, it may as well start at the first of them.
        while (best > 0 && counts[at] == 0)
        {
            at++;
        }

        return Exact(values, width, at);
    }

    private FullestWindow Exact(double[] values, double width, int at)
    {
        var (leftFrom, leftTo) = (at - Slack, at + Slack);
        var (rightFrom, rightTo) = (at + BinsPerWindow - Slack, at + BinsPerWindow + Slack);
        var (lefts, rights, between) = (0, 0, 0);
        for (var i = 0; i < bins.Length; i++)
        {
            var bin = bins[i];
            if (bin < 0 || bin < leftFrom || bin > rightTo)
            {
                continue;
            }

            if (bin <= leftTo)
            {
                left[lefts++] = values[i];
            }
            else if (bin >= rightFrom)
            {
                right[rights++] = values[i];
            }
            else
            {
                between++;
            }
        }

        Array.Sort(left, 0, lefts);
        Array.Sort(right, 0, rights);
        var (best, start, end) = (0, 0.0, 0);
        for (var i = 0; i < lefts; i++)
        {
            while (end < rights && right[end] <= left[i] + width)
            {
                end++;
            }

            if (lefts - i + between + end > best)
            {
                best = lefts - i + between + end;
                start = ((end > 0 ? right[end - 1] - width : left[i]) + left[i]) / 2;
            }
        }

        return new FullestWindow(best, start);
    }
}
