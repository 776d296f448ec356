using MathNet.Numerics;

namespace Tarry.Statistics.Distributions;

/// <summary>The standard normal distribution.</summary>
public static class NormalDistribution
{
    private const double InverseRootTwoPi = 0.39894228040143267794;
    private const double InverseRootTwo = 0.70710678118654752440;

    /// <summary>The density at <paramref name="x"/>.</summary>
    public static double Density(double x) => InverseRootTwoPi * Math.Exp(-0.5 * x * x);

    /// <summary>The probability of a value at or below <paramref name="x"/>.</summary>
    public static double Cdf(double x) => 0.5 * SpecialFunctions.Erfc(-x * InverseRootTwo);

    /// <summary>The value that a share <paramref name="p"/> lies below.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is not strictly between 0 and 1.</exception>
    public static double Quantile(double p)
    {
        Argument.RequireLevel(p, nameof(p));
        return -Math.Sqrt(2) * SpecialFunctions.ErfcInv(2 * p);
    }
}
