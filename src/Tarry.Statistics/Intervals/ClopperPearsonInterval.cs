using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Intervals;

/// <summary>The exact interval of a share (C. J. Clopper, E. S. Pearson, Biometrika 26, 1934): never below its level, for independent trials.</summary>
public static class ClopperPearsonInterval
{
    /// <summary>The two-sided interval: beta quantiles a/2 of (x, n - x + 1) and 1 - a/2 of (x + 1, n - x).</summary>
    /// <param name="count">How many of the trials, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">How many trials, 1 or more.</param>
    /// <param name="level">The confidence level, such as 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ConfidenceLimits Of(int count, int trials, double level = 0.95)
    {
        ShareArgument.Require(count, trials);
        Argument.RequireLevel(level, nameof(level));
        var tail = 0.5 * (1 - level);
        return new ConfidenceLimits(Lower(count, trials, tail), Upper(count, trials, tail));
    }

    /// <summary>The one-sided upper limit, as for "at most this share is missed".</summary>
    /// <param name="count">How many of the trials, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">How many trials, 1 or more.</param>
    /// <param name="level">The one-sided confidence level, such as 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double UpperLimit(int count, int trials, double level = 0.95)
    {
        ShareArgument.Require(count, trials);
        Argument.RequireLevel(level, nameof(level));
        return Upper(count, trials, 1 - level);
    }

    private static double Lower(int count, int trials, double tail) =>
        count == 0 ? 0
        : count == trials ? Math.Exp(Math.Log(tail) / trials)
        : BetaDistribution.Quantile(tail, count, trials - count + 1);

    private static double Upper(int count, int trials, double tail) =>
        count == trials ? 1 : 1 - Lower(trials - count, trials, tail);
}
