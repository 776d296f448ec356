using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Comparisons;

/// <summary>
/// Simultaneous confidence sets of ranks: a condition is placed after those it is told to be slower than and before
/// those it is told to be faster than, by Tukey-Kramer intervals of all differences at once.
/// </summary>
/// <remarks>
/// |difference| above q SE/sqrt(2) is told, q from the studentized range (J. W. Tukey, 1953; C. Y. Kramer, Biometrics 12,
/// 1956; ranks from pairwise intervals: D. Al Mohamad, J. J. Goeman, E. W. van Zwet, Biometrics 78, 2022). With the
/// level's probability every set holds its true rank. Two conditions whose sets overlap may still be told apart.
/// </remarks>
public static class RankSets
{
    /// <summary>From independent means that each have a variance.</summary>
    /// <param name="means">The means, small is best.</param>
    /// <param name="variances">The variance of each mean, 0 or more.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of the pooled variance, 1 or more, or infinite.</param>
    /// <param name="level">The simultaneous confidence level.</param>
    /// <exception cref="ArgumentException">The lengths differ, or a value is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static RankSet[] Of(ReadOnlySpan<double> means, ReadOnlySpan<double> variances, double degreesOfFreedom, double level = 0.95)
    {
        Argument.RequireSameLength(means.Length, variances.Length, nameof(means), nameof(variances));
        var standardErrors = new double[means.Length, means.Length];
        for (var i = 0; i < means.Length; i++)
        {
            Argument.RequireNotNegative(variances[i], $"{nameof(variances)}[{i}]");
            for (var j = 0; j < means.Length; j++)
            {
                standardErrors[i, j] = Math.Sqrt(variances[i] + variances[j]);
            }
        }

        return Of(means, standardErrors, degreesOfFreedom, level);
    }

    /// <summary>From the standard error of every difference.</summary>
    /// <param name="means">The means, small is best.</param>
    /// <param name="standardErrors">The standard error of mean i minus mean j at [i, j]; symmetric, the diagonal is not read.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of the standard errors, 1 or more, or infinite; the least of them where they differ.</param>
    /// <param name="level">The simultaneous confidence level.</param>
    /// <exception cref="ArgumentException">The lengths differ, or a value is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static RankSet[] Of(ReadOnlySpan<double> means, double[,] standardErrors, double degreesOfFreedom, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(standardErrors);
        Argument.RequireFinite(means, nameof(means));
        Argument.RequireLevel(level, nameof(level));
        Argument.RequireSameLength(means.Length, standardErrors.GetLength(0), nameof(means), nameof(standardErrors));
        Argument.RequireSameLength(means.Length, standardErrors.GetLength(1), nameof(means), nameof(standardErrors));
        var sets = new RankSet[means.Length];
        var critical = means.Length < 2 ? 0 : StudentizedRange.Quantile(level, means.Length, degreesOfFreedom) / Math.Sqrt(2);
        for (var i = 0; i < means.Length; i++)
        {
            var (faster, slower) = (0, 0);
            for (var j = 0; j < means.Length; j++)
            {
                if (j == i)
                {
                    continue;
                }

                Argument.RequireNotNegative(standardErrors[i, j], $"{nameof(standardErrors)}[{i}, {j}]");
                var excess = means[i] - means[j];
                if (Math.Abs(excess) > critical * standardErrors[i, j])
                {
                    faster += excess > 0 ? 1 : 0;
                    slower += excess < 0 ? 1 : 0;
                }
            }

            sets[i] = new RankSet(1 + faster, means.Length - slower);
        }

        return sets;
    }
}
