using Tarry.Statistics.Descriptives;

namespace Tarry.Statistics.Intervals;

/// <summary>
/// The interval of the mean of one session whose trials may depend on their neighbours: Student's t on the means of
/// 20 contiguous batches, with 19 degrees of freedom (B. Schmeiser, Oper. Res. 30, 1982).
/// </summary>
/// <remarks>It says nothing of how sessions differ, and nothing covers a beat that is longer than the session.</remarks>
public static class BatchMeansInterval
{
    /// <summary>How many batches.</summary>
    public const int Batches = 20;

    /// <summary>The fewest values: two a batch.</summary>
    public const int SmallestCount = 2 * Batches;

    /// <summary>The interval of the mean.</summary>
    /// <param name="inOrder">The values in capture order, at least <see cref="SmallestCount"/>, finite.</param>
    /// <param name="level">The confidence level, such as 0.95.</param>
    /// <exception cref="ArgumentException">There are too few values, or one is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level is not strictly between 0 and 1.</exception>
    public static ConfidenceLimits Of(ReadOnlySpan<double> inOrder, double level = 0.95) =>
        StudentInterval.Of(Moments.Mean(inOrder), StandardError(inOrder), Batches - 1, level);

    /// <summary>The standard error of the mean, sd of the batch means over sqrt(20).</summary>
    /// <param name="inOrder">The values in capture order, at least <see cref="SmallestCount"/>, finite.</param>
    /// <exception cref="ArgumentException">There are too few values, or one is not finite.</exception>
    public static double StandardError(ReadOnlySpan<double> inOrder)
    {
        Argument.RequireCount(inOrder, SmallestCount, nameof(inOrder));
        return Moments.StandardDeviation(BatchMeans.Of(inOrder, Batches)) / Math.Sqrt(Batches);
    }
}
