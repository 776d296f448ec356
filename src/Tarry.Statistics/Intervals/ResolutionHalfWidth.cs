using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Intervals;

/// <summary>Half the width of an interval whose error is a Student or normal part and a rectangular one, such as the rounding to a step.</summary>
/// <remarks>
/// Solves P(|s Z + U| &lt;= h) = level with U even over plus or minus a; the distribution function of the sum is
/// (s/2a)[G((x + a)/s) - G((x - a)/s)], G(u) = u Phi(u) + phi(u). JCGM 101 convolves the two alike. s is the standard error times t/z, so
/// that few degrees of freedom are in it. A rectangle alone gives h = level a, none gives t SE.
/// </remarks>
public static class ResolutionHalfWidth
{
    /// <summary>The half-width.</summary>
    /// <param name="standardError">The standard error, 0 or more.</param>
    /// <param name="degreesOfFreedom">Its degrees of freedom, above 0, or infinite.</param>
    /// <param name="rectangular">The half-width a of the rectangular part, 0 or more, in the same unit.</param>
    /// <param name="level">The confidence level, such as 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Of(double standardError, double degreesOfFreedom, double rectangular, double level = 0.95)
    {
        Argument.RequireNotNegative(standardError, nameof(standardError));
        Argument.RequireNotNegative(rectangular, nameof(rectangular));
        Argument.RequireLevel(level, nameof(level));
        var student = standardError == 0 ? 0 : StudentDistribution.Quantile(0.5 + (0.5 * level), degreesOfFreedom) * standardError;
        var normal = student / NormalDistribution.Quantile(0.5 + (0.5 * level));
        if (rectangular <= 1e-6 * normal)
        {
            return student;
        }

        if (normal <= 1e-6 * rectangular)
        {
            return level * rectangular;
        }

        var (low, high) = (0.0, student + rectangular);
        for (var round = 0; round < 60; round++)
        {
            var middle = (low + high) / 2;
            (low, high) = Inside(middle, normal, rectangular) < level ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    // P(|s Z + U| <= h): the distribution function of the sum at h less at -h.
    private static double Inside(double h, double s, double a) => Below(h, s, a) - Below(-h, s, a);

    private static double Below(double x, double s, double a) => s / (2 * a) * (Integral((x + a) / s) - Integral((x - a) / s));

    private static double Integral(double u) => (u * NormalDistribution.Cdf(u)) + NormalDistribution.Density(u);
}
