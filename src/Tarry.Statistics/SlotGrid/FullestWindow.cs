namespace Tarry.Statistics.SlotGrid;

/// <summary>The most values that a window of a given width can hold, and where it starts: the middle of its ties.</summary>
internal readonly record struct FullestWindow(int Count, double Start)
{
    public static FullestWindow OfSorted(double[] sorted, double width)
    {
        var (best, at, end) = (0, 0, 0);
        for (var i = 0; i < sorted.Length; i++)
        {
            while (end < sorted.Length && sorted[end] <= sorted[i] + width)
            {
                end++;
            }

            if (end - i > best)
            {
                (best, at) = (end - i, i);
            }
        }

        return new FullestWindow(best, (sorted[at] + sorted[at + best - 1] - width) / 2);
    }
}
