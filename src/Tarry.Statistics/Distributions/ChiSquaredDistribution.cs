using MathNet.Numerics;

namespace Tarry.Statistics.Distributions;

/// <summary>The chi-squared distribution: a sum of squares of independent standard normal values.</summary>
public static class ChiSquaredDistribution
{
    /// <summary>The probability of a value at or below <paramref name="x"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom are not finite and above 0.</exception>
    public static double Cdf(double x, double degreesOfFreedom)
    {
        Argument.RequirePositive(degreesOfFreedom, nameof(degreesOfFreedom));
        return x <= 0 ? 0 : SpecialFunctions.GammaLowerRegularized(0.5 * degreesOfFreedom, 0.5 * x);
    }

    /// <summary>The probability of a value above <paramref name="x"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom are not finite and above 0.</exception>
    public static double UpperTail(double x, double degreesOfFreedom)
    {
        Argument.RequirePositive(degreesOfFreedom, nameof(degreesOfFreedom));
        return x <= 0 ? 1 : SpecialFunctions.GammaUpperRegularized(0.5 * degreesOfFreedom, 0.5 * x);
    }

    /// <summary>The value that a share <paramref name="p"/> lies below.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is not strictly between 0 and 1, or the degrees of freedom are not finite and above 0.</exception>
    public static double Quantile(double p, double degreesOfFreedom)
    {
        Argument.RequireLevel(p, nameof(p));
        Argument.RequirePositive(degreesOfFreedom, nameof(degreesOfFreedom));
        return 2 * MathNet.Numerics.Distributions.Gamma.InvCDF(0.5 * degreesOfFreedom, 1, p);
    }
}
