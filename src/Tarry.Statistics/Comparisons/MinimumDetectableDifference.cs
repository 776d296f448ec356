using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Comparisons;

/// <summary>The smallest true difference that a comparison of this precision would tell with the given power.</summary>
public static class MinimumDetectableDifference
{
    /// <summary>(t at 1 - a/2 + t at the power) SE: the usual approximation of the noncentral t.</summary>
    /// <param name="standardError">The standard error of the difference, 0 or more.</param>
    /// <param name="degreesOfFreedom">Its degrees of freedom, above 0 or infinite.</param>
    /// <param name="level">The confidence level, such as 0.95.</param>
    /// <param name="power">The power, such as 0.80.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Of(double standardError, double degreesOfFreedom, double level = 0.95, double power = 0.80)
    {
        Argument.RequireNotNegative(standardError, nameof(standardError));
        Argument.RequireLevel(level, nameof(level));
        return standardError
            * (StudentDistribution.Quantile(0.5 + (0.5 * level), degreesOfFreedom) + StudentDistribution.Quantile(power, degreesOfFreedom));
    }
}
