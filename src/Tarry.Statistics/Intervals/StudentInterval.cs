using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Intervals;

/// <summary>estimate +- t SE.</summary>
public static class StudentInterval
{
    /// <summary>The interval.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="standardError">Its standard error, in the same unit, 0 or more.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of the standard error, above 0, or infinite.</param>
    /// <param name="level">The confidence level, such as 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ConfidenceLimits Of(double estimate, double standardError, double degreesOfFreedom, double level = 0.95)
    {
        Argument.RequireNotNegative(standardError, nameof(standardError));
        Argument.RequireLevel(level, nameof(level));
        var halfWidth = StudentDistribution.Quantile(0.5 + (0.5 * level), degreesOfFreedom) * standardError;
        return new ConfidenceLimits(estimate - halfWidth, estimate + halfWidth);
    }
}
