namespace Tarry.Statistics.Distributions;

/// <summary>The F distribution: a ratio of two independent variances of normal values.</summary>
public static class FisherDistribution
{
    /// <summary>The probability of a ratio at or below <paramref name="ratio"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom are not finite and above 0.</exception>
    public static double Cdf(double ratio, double numerator, double denominator) =>
        Tail(ratio, numerator, denominator, upper: false);

    /// <summary>The probability of a ratio above <paramref name="ratio"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom are not finite and above 0.</exception>
    public static double UpperTail(double ratio, double numerator, double denominator) =>
        Tail(ratio, numerator, denominator, upper: true);

    private static double Tail(double ratio, double numerator, double denominator, bool upper)
    {
        Argument.RequirePositive(numerator, nameof(numerator));
        Argument.RequirePositive(denominator, nameof(denominator));
        if (ratio <= 0 || double.IsPositiveInfinity(ratio))
        {
            return ratio <= 0 == upper ? 1 : 0;
        }

        var sum = (numerator * ratio) + denominator;
        var x = numerator * ratio / sum;
        var y = denominator / sum;
        return upper
            ? IncompleteBeta.Of(0.5 * denominator, 0.5 * numerator, y, x)
            : IncompleteBeta.Of(0.5 * numerator, 0.5 * denominator, x, y);
    }
}
