namespace Tarry.Statistics.Distributions;

/// <summary>The beta distribution.</summary>
public static class BetaDistribution
{
    /// <summary>The probability of a value at or below <paramref name="x"/>: the regularised incomplete beta function I_x(a, b).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is not finite and above 0.</exception>
    public static double Cdf(double x, double a, double b)
    {
        Argument.RequirePositive(a, nameof(a));
        Argument.RequirePositive(b, nameof(b));
        return IncompleteBeta.Of(a, b, x, 1 - x);
    }

    /// <summary>The value that a share <paramref name="p"/> lies below.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is not strictly between 0 and 1, or a parameter is not finite and above 0.</exception>
    public static double Quantile(double p, double a, double b)
    {
        Argument.RequireLevel(p, nameof(p));
        Argument.RequirePositive(a, nameof(a));
        Argument.RequirePositive(b, nameof(b));
        return MonotoneRoot.Find(
            x => (IncompleteBeta.Of(a, b, x, 1 - x) - p, IncompleteBeta.Density(a, b, x, 1 - x)),
            low: 0,
            high: 1,
            increasing: true);
    }
}
