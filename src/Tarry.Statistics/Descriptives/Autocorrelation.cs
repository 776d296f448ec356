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
        var deviations = Deviations(inOrder);
        return SumOfProducts(deviations, lag) / SumOfProducts(deviations, 0);
    }

    /// <summary>The autocorrelations at lags 1 to <paramref name="lags"/>.</summary>
    /// <param name="inOrder">The values in capture order; more than <paramref name="lags"/>, not all equal, finite.</param>
    /// <param name="lags">How many, 1 or more.</param>
    /// <exception cref="ArgumentException">There are too few values, one is not finite, or all are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of lags is not positive.</exception>
    public static double[] UpToLag(ReadOnlySpan<double> inOrder, int lags)
    {
        Argument.RequireAtLeast(lags, 1, nameof(lags), "Lag 1 compares neighbours.");
        Argument.RequireCount(inOrder, lags + 1, nameof(inOrder));
        var deviations = Deviations(inOrder);
        var squares = SumOfProducts(deviations, 0);
        var autocorrelations = new double[lags];
        for (var lag = 1; lag <= lags; lag++)
        {
            autocorrelations[lag - 1] = SumOfProducts(deviations, lag) / squares;
        }

        return autocorrelations;
    }

    private static double[] Deviations(ReadOnlySpan<double> inOrder)
    {
        var mean = Moments.Mean(inOrder);
        if (inOrder.IndexOfAnyExcept(inOrder[0]) < 0)
        {
            throw new ArgumentException("Every value is the same; an autocorrelation needs values that vary. Check for constant values first.", nameof(inOrder));
        }

        var deviations = new double[inOrder.Length];
        for (var i = 0; i < deviations.Length; i++)
        {
            deviations[i] = inOrder[i] - mean;
        }

        return deviations;
    }

    private static double SumOfProducts(ReadOnlySpan<double> deviations, int lag)
    {
        // Four sums side by side hide the latency of adding; their fixed number keeps the result the same everywhere.
        var (a, b, c, d) = (0.0, 0.0, 0.0, 0.0);
        var left = deviations[..^lag];
        var right = deviations[lag..];
        var i = 0;
        for (; i + 3 < left.Length; i += 4)
        {
            a += left[i] * right[i];
            b += left[i + 1] * right[i + 1];
            c += left[i + 2] * right[i + 2];
            d += left[i + 3] * right[i + 3];
        }

        for (; i < left.Length; i++)
        {
            a += left[i] * right[i];
        }

        return a + b + c + d;
    }
}
