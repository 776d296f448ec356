using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Quantiles;

/// <summary>Exact confidence intervals of quantiles from order statistics, for any continuous distribution and with ties.</summary>
/// <remarks>
/// Lower rank binom^-1(a/2; n, p), upper rank binom^-1(1 - a/2; n, p) + 1, closed (H. A. David, H. N. Nagaraja, Order
/// Statistics, 3rd ed., 7.1). Each tail holds at most a/2. Trials are taken as independent: over several sessions the
/// half-width grows by the variation between sessions.
/// </remarks>
public static class OrderStatisticInterval
{
    /// <summary>The ranks of the two-sided interval.</summary>
    /// <param name="trials">How many trials, misses included.</param>
    /// <param name="quantileLevel">Which quantile, such as 0.95.</param>
    /// <param name="confidence">The confidence level, such as 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no trial, or a level is not strictly between 0 and 1.</exception>
    public static OrderStatisticRanks Ranks(int trials, double quantileLevel, double confidence = 0.95)
    {
        Argument.RequireLevel(quantileLevel, nameof(quantileLevel));
        Argument.RequireLevel(confidence, nameof(confidence));
        var tail = 0.5 * (1 - confidence);
        var lower = BinomialDistribution.Quantile(tail, trials, quantileLevel);
        var upper = BinomialDistribution.Quantile(1 - tail, trials, quantileLevel) + 1;
        var coverage = BinomialDistribution.Cdf(upper - 1, trials, quantileLevel)
            - BinomialDistribution.Cdf(lower - 1, trials, quantileLevel);
        return new OrderStatisticRanks(lower, upper, trials, coverage);
    }

    /// <summary>The rank whose order statistic the quantile is at or below with at least the confidence; one more than the trials where they are too few.</summary>
    /// <param name="trials">How many trials, misses included.</param>
    /// <param name="quantileLevel">Which quantile.</param>
    /// <param name="confidence">The one-sided confidence level.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no trial, or a level is not strictly between 0 and 1.</exception>
    public static int OneSidedUpperRank(int trials, double quantileLevel, double confidence = 0.95) =>
        BinomialDistribution.Quantile(confidence, trials, quantileLevel) + 1;

    /// <summary>The two-sided interval.</summary>
    /// <param name="sorted">The values that arrived, ascending.</param>
    /// <param name="quantileLevel">Which quantile.</param>
    /// <param name="confidence">The confidence level.</param>
    /// <param name="missed">How many trials had no response; they count as +infinity.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no trial, or a level is not strictly between 0 and 1.</exception>
    public static OrderStatisticLimits Of(ReadOnlySpan<double> sorted, double quantileLevel, double confidence = 0.95, int missed = 0)
    {
        Argument.RequireAtLeast(missed, 0, nameof(missed), "Count the trials without a response.");
        var ranks = Ranks(sorted.Length + missed, quantileLevel, confidence);
        return new OrderStatisticLimits(ranks, At(sorted, ranks.Lower), At(sorted, ranks.Upper));
    }

    /// <summary>The fewest trials that give both limits: p^n and (1 - p)^n at most a/2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A level is not strictly between 0 and 1.</exception>
    public static int SmallestCount(double quantileLevel, double confidence = 0.95)
    {
        Argument.RequireLevel(confidence, nameof(confidence));
        return SmallestPower(Math.Max(quantileLevel, 1 - quantileLevel), 0.5 * (1 - confidence), nameof(quantileLevel));
    }

    /// <summary>
    /// The fewest trials whose largest value is an upper limit of the quantile: p^n at most 1 - confidence
    /// (S. S. Wilks, Ann. Math. Statist. 12, 1941).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A level is not strictly between 0 and 1.</exception>
    public static int OneSidedSmallestCount(double quantileLevel, double confidence = 0.95)
    {
        Argument.RequireLevel(confidence, nameof(confidence));
        return SmallestPower(quantileLevel, 1 - confidence, nameof(quantileLevel));
    }

    private static int SmallestPower(double share, double tail, string name)
    {
        Argument.RequireLevel(share, name);
        return (int)Math.Ceiling((Math.Log(tail) / Math.Log(share)) - 1e-9);
    }

    private static double? At(ReadOnlySpan<double> sorted, int rank) =>
        rank >= 1 && rank <= sorted.Length ? sorted[rank - 1] : null;
}
