using Tarry.Statistics.Descriptives;

namespace Tarry.Statistics.Comparisons;

/// <summary>
/// The difference of two independent means of unequal variance: SE = sqrt(s1^2/n1 + s2^2/n2), with the degrees of freedom
/// of B. L. Welch (Biometrika 34, 1947) and F. E. Satterthwaite (1946). Give session means, not trials: trials of one
/// session are not independent of each other.
/// </summary>
public static class WelchDifference
{
    /// <summary>From values: first minus second.</summary>
    /// <exception cref="ArgumentException">A side has fewer than two values, or one is not finite.</exception>
    public static MeanDifference Of(ReadOnlySpan<double> first, ReadOnlySpan<double> second) =>
        OfSummaries(
            Moments.Mean(first),
            Moments.StandardDeviation(first),
            first.Length,
            Moments.Mean(second),
            Moments.StandardDeviation(second),
            second.Length);

    /// <summary>From means, standard deviations and counts: first minus second.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A standard deviation is negative, or a count is below two.</exception>
    public static MeanDifference OfSummaries(
        double firstMean, double firstDeviation, int firstCount, double secondMean, double secondDeviation, int secondCount)
    {
        Argument.RequireAtLeast(firstCount, 2, nameof(firstCount), "Run a second session.");
        Argument.RequireAtLeast(secondCount, 2, nameof(secondCount), "Run a second session.");
        Argument.RequireNotNegative(firstDeviation, nameof(firstDeviation));
        Argument.RequireNotNegative(secondDeviation, nameof(secondDeviation));
        return OfVariances(
            firstMean - secondMean,
            firstDeviation * firstDeviation / firstCount,
            firstCount - 1,
            secondDeviation * secondDeviation / secondCount,
            secondCount - 1);
    }

    /// <summary>From the variances of two independent means, each with its own degrees of freedom, as moderated ones have.</summary>
    /// <param name="difference">First mean minus second mean.</param>
    /// <param name="firstVariance">The variance of the first mean.</param>
    /// <param name="firstDegreesOfFreedom">Its degrees of freedom; may be infinite.</param>
    /// <param name="secondVariance">The variance of the second mean.</param>
    /// <param name="secondDegreesOfFreedom">Its degrees of freedom; may be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException">A variance is negative, or degrees of freedom are not above 0.</exception>
    public static MeanDifference OfVariances(
        double difference, double firstVariance, double firstDegreesOfFreedom, double secondVariance, double secondDegreesOfFreedom)
    {
        Argument.RequireNotNegative(firstVariance, nameof(firstVariance));
        Argument.RequireNotNegative(secondVariance, nameof(secondVariance));
        Argument.RequireDegreesOfFreedom(firstDegreesOfFreedom, nameof(firstDegreesOfFreedom));
        Argument.RequireDegreesOfFreedom(secondDegreesOfFreedom, nameof(secondDegreesOfFreedom));
        var sum = firstVariance + secondVariance;
        var share = sum == 0 ? 0.5 : firstVariance / sum;
        var degrees = 1 / ((share * share / firstDegreesOfFreedom) + ((1 - share) * (1 - share) / secondDegreesOfFreedom));
        return new MeanDifference(difference, Math.Sqrt(sum), degrees);
    }
}
