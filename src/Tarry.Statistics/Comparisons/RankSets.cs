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
/// Where differences bring degrees of freedom of their own, each is held against its own q.
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
        var differences = new MeanDifference?[means.Length, means.Length];
        for (var i = 0; i < means.Length; i++)
        {
            for (var j = i + 1; j < means.Length; j++)
            {
                Argument.RequireNotNegative(standardErrors[i, j], $"{nameof(standardErrors)}[{i}, {j}]");
                differences[i, j] = new MeanDifference(means[i] - means[j], standardErrors[i, j], degreesOfFreedom);
            }
        }

        return Of(Told(differences, level));
    }

    /// <summary>Which conditions are told to be faster than which, by the simultaneous interval of each difference.</summary>
    /// <param name="differences">Mean i minus mean j at [i, j] with i below j, the rest is not read; null where nothing compares the two.</param>
    /// <param name="level">The simultaneous confidence level.</param>
    /// <returns>At [i, j] whether i is told to have the smaller mean.</returns>
    /// <exception cref="ArgumentException">The matrix is not square.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level is out of range, or degrees of freedom are below 1.</exception>
    public static bool[,] Told(MeanDifference?[,] differences, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(differences);
        Argument.RequireLevel(level, nameof(level));
        var count = differences.GetLength(0);
        Argument.RequireSameLength(count, differences.GetLength(1), nameof(differences), nameof(differences));
        var told = new bool[count, count];
        var critical = new Dictionary<double, double>();
        for (var i = 0; i < count; i++)
        {
            for (var j = i + 1; j < count; j++)
            {
                if (differences[i, j] is not { } difference)
                {
                    continue;
                }

                if (!critical.TryGetValue(difference.DegreesOfFreedom, out var q))
                {
                    q = StudentizedRange.Quantile(level, count, difference.DegreesOfFreedom) / Math.Sqrt(2);
                    critical[difference.DegreesOfFreedom] = q;
                }

                told[i, j] = difference.Difference < -q * difference.StandardError;
                told[j, i] = difference.Difference > q * difference.StandardError;
            }
        }

        return told;
    }

    /// <summary>From what is told: one place after those told to be faster, and before those told to be slower.</summary>
    /// <param name="told">At [i, j] whether i is told to have the smaller mean, as <see cref="Told"/> gives it.</param>
    /// <exception cref="ArgumentException">The matrix is not square.</exception>
    public static RankSet[] Of(bool[,] told)
    {
        ArgumentNullException.ThrowIfNull(told);
        var count = told.GetLength(0);
        Argument.RequireSameLength(count, told.GetLength(1), nameof(told), nameof(told));
        var sets = new RankSet[count];
        for (var i = 0; i < count; i++)
        {
            var (faster, slower) = (0, 0);
            for (var j = 0; j < count; j++)
            {
                faster += told[j, i] ? 1 : 0;
                slower += told[i, j] ? 1 : 0;
            }

            sets[i] = new RankSet(1 + faster, count - slower);
        }

        return sets;
    }
}
