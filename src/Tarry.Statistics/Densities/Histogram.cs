namespace Tarry.Statistics.Densities;

/// <summary>How many values fall into each of evenly wide bins; nothing is dropped.</summary>
/// <param name="From">The low edge of the first bin, inside it.</param>
/// <param name="BinWidth">The width of a bin, in the unit of the values.</param>
/// <param name="Counts">The count of each bin; a bin holds its low edge and not its high edge.</param>
/// <param name="Below">How many values lie below the first bin.</param>
/// <param name="Above">How many values lie at or above the end of the last bin.</param>
public sealed record Histogram(double From, double BinWidth, IReadOnlyList<int> Counts, int Below, int Above)
{
    /// <summary>Counts values.</summary>
    /// <param name="values">Finite values in any order.</param>
    /// <param name="from">The low edge of the first bin.</param>
    /// <param name="binWidth">The width of a bin, above 0.</param>
    /// <param name="bins">How many bins, 1 or more.</param>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The bin width or the number of bins is out of range.</exception>
    public static Histogram Of(ReadOnlySpan<double> values, double from, double binWidth, int bins)
    {
        Argument.RequireFinite(values, nameof(values));
        Argument.RequirePositive(binWidth, nameof(binWidth));
        Argument.RequireAtLeast(bins, 1, nameof(bins), "Give the number of bins over the range of the values.");
        var counts = new int[bins];
        var (below, above) = (0, 0);
        foreach (var value in values)
        {
            var bin = Math.Floor((value - from) / binWidth);
            if (bin < 0)
            {
                below++;
            }
            else if (bin >= bins)
            {
                above++;
            }
            else
            {
                counts[(int)bin]++;
            }
        }

        return new Histogram(from, binWidth, counts, below, above);
    }
}
