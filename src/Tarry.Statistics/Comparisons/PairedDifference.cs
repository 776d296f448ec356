using Tarry.Statistics.Descriptives;

namespace Tarry.Statistics.Comparisons;

/// <summary>The mean of differences within pairs, such as condition minus reference in one sitting: SE = s/sqrt(J), J - 1 degrees of freedom.</summary>
public static class PairedDifference
{
    /// <summary>From the differences within pairs.</summary>
    /// <exception cref="ArgumentException">There are fewer than two, or one is not finite.</exception>
    public static MeanDifference Of(ReadOnlySpan<double> differences) =>
        new(Moments.Mean(differences), Moments.StandardDeviation(differences) / Math.Sqrt(differences.Length), differences.Length - 1);

    /// <summary>From the values of either side in the order of their pairs: first minus second.</summary>
    /// <exception cref="ArgumentException">There are fewer than two pairs, the lengths differ, or a value is not finite.</exception>
    public static MeanDifference Of(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        Argument.RequireSameLength(first.Length, second.Length, nameof(first), nameof(second));
        var differences = new double[first.Length];
        for (var i = 0; i < differences.Length; i++)
        {
            differences[i] = first[i] - second[i];
        }

        return Of(differences);
    }
}
