using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Intervals;

/// <summary>Half the width of an interval about an estimate that varies by chance and is off by up to a limit besides, such as rounding to a step that no repetition averages.</summary>
/// <remarks>
/// Solves Phi((h - a)/s) - Phi((-h - a)/s) = level, s the standard error times t/z, so that few degrees of freedom are in it: the interval
/// holds the truth as often as the level says however far within a the rounding is off (G. W. Imbens, C. F. Manski, Econometrica 72 (2004)
/// 1845, from memory). The limit alone gives h = a, none gives t SE.
/// </remarks>
public static class ResolutionHalfWidth
{
    /// <summary>The half-width.</summary>
    /// <param name="standardError">The standard error, 0 or more.</param>
    /// <param name="degreesOfFreedom">Its degrees of freedom, above 0, or infinite.</param>
    /// <param name="limit">The limit a, 0 or more, in the same unit.</param>
    /// <param name="level">The confidence level, such as 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Of(double standardError, double degreesOfFreedom, double limit, double level = 0.95)
    {
        Argument.RequireNotNegative(standardError, nameof(standardError));
        Argument.RequireNotNegative(limit, nameof(limit));
        Argument.RequireLevel(level, nameof(level));
        var student = standardError == 0 ? 0 : StudentDistribution.Quantile(0.5 + (0.5 * level), degreesOfFreedom) * standardError;
        var normal = student / NormalDistribution.Quantile(0.5 + (0.5 * level));
        if (limit <= 1e-6 * normal)
        {
            return student;
        }

        if (normal <= 1e-6 * limit)
        {
            return limit;
        }

        var (low, high) = (limit, student + limit);
        for (var round = 0; round < 60; round++)
        {
            var middle = (low + high) / 2;
            (low, high) = NormalDistribution.Cdf((middle - limit) / normal) - NormalDistribution.Cdf((-middle - limit) / normal) < level ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
