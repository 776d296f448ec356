namespace Tarry.Statistics.Descriptives;

/// <summary>How alike values are that lie a number of trials apart.</summary>
public static class Autocorrelation
{
    /// <summary>
    /// The autocorrelation r_k = sum (x_i - mean)(x_(i+k) - mean) / sum (x_i - mean)^2, as NIST StRD certifies it and
    /// R's <c>acf</c> computes it.
    /// </summary>
    /// <param name="inOrder">The values in capture order; more than <paramref name="lag"/>, not all equal, finite.</param>
    /// <param name="lag">How many trials apart, 1 or more.</param>
    /// <exception cref="ArgumentException">There are too few values, one is not finite, or all are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The lag is not positive.</exception>
    public static double AtLag(ReadOnlySpan<double> inOrder, int lag)
    {
        Argument.RequireAtLeast(lag, 1, nameof(lag), "Lag 1 compares neighbours.");
        Argument.RequireCount(inOrder, lag + 1, nameof(inOrder));
        var mean = Moments.Mean(inOrder);
        var squares = 0.0;
        foreach (var value in inOrder)
        {
            squares += (value - mean) * (value - mean);
        }

        if (squares == 0)
        {
            throw new ArgumentException("Every value is the same; an autocorrelation needs values that vary. Check for constant values first.", nameof(inOrder));
        }

        var products = 0.0;
        for (var i = lag; i < inOrder.Length; i++)
        {
            products += (inOrder[i - lag] - mean) * (inOrder[i] - mean);
        }

        return products / squares;
    }
}
