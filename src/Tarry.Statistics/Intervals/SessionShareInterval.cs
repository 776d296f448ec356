using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Intervals;

/// <summary>
/// The interval of a small share, such as of missed presses, over sessions that may differ: exact over all trials
/// where the sessions agree, else Student's t on the root of the session rates.
/// </summary>
/// <remarks>
/// Where they differ: y = sqrt((x + 3/8)/n) (F. J. Anscombe, Biometrika 35, 1948), whose variance hardly depends on the
/// rate; mean of y +- t s/sqrt(J), squared. Agreement is judged by Pearson's chi-squared at <see cref="AgreementLevel"/>,
/// above the usual 0.05 because a pooled interval over sessions that differ is far too short.
/// </remarks>
public static class SessionShareInterval
{
    /// <summary>Sessions count as different when the heterogeneity p is below this.</summary>
    public const double AgreementLevel = 0.1;

    /// <summary>The share with its interval.</summary>
    /// <param name="counts">How many trials of each session count, such as the missed ones.</param>
    /// <param name="trials">How many trials each session has, in the same order.</param>
    /// <param name="level">The confidence level, such as 0.95.</param>
    /// <exception cref="ArgumentException">There is no session, or the lengths differ.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count, number of trials or the level is outside its range.</exception>
    public static SessionShare Of(ReadOnlySpan<int> counts, ReadOnlySpan<int> trials, double level = 0.95)
    {
        Argument.RequireSameLength(counts.Length, trials.Length, nameof(counts), nameof(trials));
        Argument.RequireLevel(level, nameof(level));
        var (count, all) = (0, 0);
        for (var j = 0; j < counts.Length; j++)
        {
            ShareArgument.Require(counts[j], trials[j]);
            count += counts[j];
            all += trials[j];
        }

        var share = (double)count / Math.Max(1, all);
        var pooled = ClopperPearsonInterval.Of(count, all, level);
        var statistic = Heterogeneity(counts, trials, share);
        var p = counts.Length < 2 ? 1 : ChiSquaredDistribution.UpperTail(statistic, counts.Length - 1);
        return p >= AgreementLevel
            ? new SessionShare(share, pooled, SessionsDiffer: false, statistic, p)
            : new SessionShare(share, OnRoots(counts, trials, level), SessionsDiffer: true, statistic, p);
    }

    private static double Heterogeneity(ReadOnlySpan<int> counts, ReadOnlySpan<int> trials, double share)
    {
        if (share is 0 or 1)
        {
            return 0;
        }

        var sum = 0.0;
        for (var j = 0; j < counts.Length; j++)
        {
            var excess = counts[j] - (trials[j] * share);
            sum += excess * excess / (trials[j] * share * (1 - share));
        }

        return sum;
    }

    private static ConfidenceLimits OnRoots(ReadOnlySpan<int> counts, ReadOnlySpan<int> trials, double level)
    {
        var roots = new double[counts.Length];
        for (var j = 0; j < roots.Length; j++)
        {
            roots[j] = Math.Sqrt((counts[j] + 0.375) / trials[j]);
        }

        var standardError = Moments.StandardDeviation(roots) / Math.Sqrt(roots.Length);
        var limits = StudentInterval.Of(Moments.Mean(roots), standardError, roots.Length - 1, level);
        var (low, high) = (Math.Max(0, limits.Low), limits.High);
        return new ConfidenceLimits(low * low, Math.Min(1, high * high));
    }
}
