namespace Tarry.Statistics.Descriptives;

/// <summary>Mean and standard deviation, in the unit of the values.</summary>
/// <remarks>
/// Two passes with the rounding of the first mean corrected by the second (T. F. Chan, G. H. Golub, R. J. LeVeque,
/// Amer. Statist. 37, 1983): the NIST StRD certified digits that a double can hold. Summed in one fixed order, so the
/// result is the same to the bit on every machine.
/// </remarks>
public static class Moments
{
    /// <summary>The arithmetic mean.</summary>
    /// <param name="values">One or more finite values.</param>
    /// <exception cref="ArgumentException">There is no value, or one is not finite.</exception>
    public static double Mean(ReadOnlySpan<double> values)
    {
        Argument.RequireCount(values, 1, nameof(values));
        Argument.RequireFinite(values, nameof(values));
        return MeanOf(values);
    }

    /// <summary>The standard deviation, sqrt(sum (x - mean)^2 / (n - 1)).</summary>
    /// <param name="values">Two or more finite values.</param>
    /// <exception cref="ArgumentException">There are fewer than two values, or one is not finite.</exception>
    public static double StandardDeviation(ReadOnlySpan<double> values) => Math.Sqrt(Variance(values));

    /// <summary>The variance, sum (x - mean)^2 / (n - 1), in the unit of the values squared.</summary>
    /// <param name="values">Two or more finite values.</param>
    /// <exception cref="ArgumentException">There are fewer than two values, or one is not finite.</exception>
    public static double Variance(ReadOnlySpan<double> values)
    {
        Argument.RequireCount(values, 2, nameof(values));
        Argument.RequireFinite(values, nameof(values));
        var mean = MeanOf(values);
        var squares = 0.0;
        var rounding = 0.0;
        foreach (var value in values)
        {
            var deviation = value - mean;
            squares += deviation * deviation;
            rounding += deviation;
        }

        return Math.Max(0, squares - (rounding * rounding / values.Length)) / (values.Length - 1);
    }

    private static double MeanOf(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value;
        }

        var mean = sum / values.Length;
        var rounding = 0.0;
        foreach (var value in values)
        {
            rounding += value - mean;
        }

        return mean + (rounding / values.Length);
    }
}
