using Tarry.Statistics.Distributions;
using Tarry.Statistics.Intervals;

namespace Tarry.Statistics.Comparisons;

/// <summary>A difference of means with its standard error: what every test and interval of it needs.</summary>
/// <param name="Difference">The difference, in the unit of the values.</param>
/// <param name="StandardError">Its standard error, in the same unit.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the standard error; may be fractional or infinite.</param>
public readonly record struct MeanDifference(double Difference, double StandardError, double DegreesOfFreedom)
{
    /// <summary>The difference in standard errors; infinite where the standard error is 0 and the difference is not.</summary>
    public double Statistic => Difference == 0 ? 0 : Difference / StandardError;

    /// <summary>The two-sided p of no difference.</summary>
    public double TwoSidedP => StudentDistribution.TwoSidedP(Statistic, DegreesOfFreedom);

    /// <summary>The interval of the difference.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The level is not strictly between 0 and 1.</exception>
    public ConfidenceLimits Limits(double level = 0.95) =>
        StudentInterval.Of(Difference, StandardError, DegreesOfFreedom, level);
}
