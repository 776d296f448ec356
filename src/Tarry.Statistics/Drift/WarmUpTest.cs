using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Drift;

/// <summary>Whether a session begins later or sooner than it goes on, as a device does that warms up.</summary>
/// <remarks>
/// The contrast of ranks sum (w_i - mean w) r_i with w_i = e^(-5 i/n), over its standard deviation: the most powerful one for an
/// exponential approach with a time constant of a fifth of the session, which hardly moves the largest cumulative sum. The standard
/// deviation is from successive differences of 60 batch means (J. von Neumann et al., Ann. Math. Statist. 12, 1941), whose
/// variance is that of 2 (b - 1)^2 / (3 b - 4) = 39.6 degrees of freedom; p is Student's on these.
/// </remarks>
public static class WarmUpTest
{
    /// <summary>The fewest values: two a batch.</summary>
    public const int SmallestCount = 2 * Batches;

    private const int Batches = 60;
    private const double Decay = 5;
    private const double DegreesOfFreedom = 2.0 * (Batches - 1) * (Batches - 1) / ((3 * Batches) - 4);

    /// <summary>The test, two-sided.</summary>
    /// <param name="inOrder">The values in capture order, at least <see cref="SmallestCount"/>, finite.</param>
    /// <returns>The statistic and its p; a p of 1 where the mean rank of every batch is the same.</returns>
    /// <exception cref="ArgumentException">There are too few values, or one is not finite.</exception>
    public static StatisticTest Of(ReadOnlySpan<double> inOrder)
    {
        Argument.RequireCount(inOrder, SmallestCount, nameof(inOrder));
        Argument.RequireFinite(inOrder, nameof(inOrder));
        var ranks = MidRanks.Of(inOrder);
        var weights = new double[ranks.Length];
        for (var i = 0; i < weights.Length; i++)
        {
            weights[i] = Math.Exp(-Decay * (i + 0.5) / weights.Length);
        }

        var (meanWeight, meanRank) = (Moments.Mean(weights), 0.5 * (ranks.Length + 1));
        var (contrast, squares) = (0.0, 0.0);
        for (var i = 0; i < weights.Length; i++)
        {
            contrast += (weights[i] - meanWeight) * (ranks[i] - meanRank);
            squares += (weights[i] - meanWeight) * (weights[i] - meanWeight);
        }

        var means = BatchMeans.Of(ranks, Batches);
        var differences = 0.0;
        for (var i = 1; i < means.Length; i++)
        {
            differences += (means[i] - means[i - 1]) * (means[i] - means[i - 1]);
        }

        var deviation = Math.Sqrt(0.5 * ranks.Length / Batches * differences / (Batches - 1));
        if (deviation == 0)
        {
            return new StatisticTest(0, 1);
        }

        var statistic = contrast / (deviation * Math.Sqrt(squares));
        return new StatisticTest(statistic, StudentDistribution.TwoSidedP(statistic, DegreesOfFreedom));
    }
}
