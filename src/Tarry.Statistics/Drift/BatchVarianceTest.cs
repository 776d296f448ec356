using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Drift;

/// <summary>
/// Whether 20 contiguous batches differ more than independent trials would (drift, long dependence) or less (presses on
/// a lattice make batches too alike): the F of one-way analysis of variance, two-sided.
/// </summary>
/// <remarks>p = 2 min(P(F &lt;= f), P(F > f)) on 19 and n - 20 degrees of freedom; trials need not be normal at these counts.</remarks>
public static class BatchVarianceTest
{
    /// <summary>How many batches.</summary>
    public const int Batches = 20;

    /// <summary>The fewest values: two a batch.</summary>
    public const int SmallestCount = 2 * Batches;

    /// <summary>The test.</summary>
    /// <param name="inOrder">The values in capture order, at least <see cref="SmallestCount"/>, finite.</param>
    /// <returns>F and its two-sided p; a p of 1 where every value is the same.</returns>
    /// <exception cref="ArgumentException">There are too few values, or one is not finite.</exception>
    public static StatisticTest Of(ReadOnlySpan<double> inOrder)
    {
        Argument.RequireCount(inOrder, SmallestCount, nameof(inOrder));
        var mean = Moments.Mean(inOrder);
        var means = BatchMeans.Of(inOrder, Batches);
        var between = 0.0;
        var within = 0.0;
        for (var batch = 0; batch < Batches; batch++)
        {
            var start = BatchMeans.Start(inOrder.Length, Batches, batch);
            var end = BatchMeans.Start(inOrder.Length, Batches, batch + 1);
            between += (end - start) * (means[batch] - mean) * (means[batch] - mean);
            foreach (var value in inOrder[start..end])
            {
                within += (value - means[batch]) * (value - means[batch]);
            }
        }

        if (between == 0 && within == 0)
        {
            return new StatisticTest(0, 1);
        }

        var ratio = between / (Batches - 1) / (within / (inOrder.Length - Batches));
        var lower = FisherDistribution.Cdf(ratio, Batches - 1, inOrder.Length - Batches);
        var upper = FisherDistribution.UpperTail(ratio, Batches - 1, inOrder.Length - Batches);
        return new StatisticTest(ratio, Math.Min(1, 2 * Math.Min(lower, upper)));
    }
}
