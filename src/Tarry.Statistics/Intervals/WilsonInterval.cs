using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Intervals;

/// <summary>The score interval of a share (E. B. Wilson, J. Amer. Statist. Assoc. 22, 1927): near its level on average, shorter than the exact one.</summary>
public static class WilsonInterval
{
    /// <summary>(p + z^2/2n +- z sqrt(p(1-p)/n + z^2/4n^2)) / (1 + z^2/n), without continuity correction.</summary>
    /// <param name="count">How many of the trials, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">How many trials, 1 or more.</param>
    /// <param name="level">The confidence level, such as 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ConfidenceLimits Of(int count, int trials, double level = 0.95)
    {
        ShareArgument.Require(count, trials);
        Argument.RequireLevel(level, nameof(level));
        var z = NormalDistribution.Quantile(0.5 + (0.5 * level));
        var share = (double)count / trials;
        var perTrial = z * z / trials;
        var centre = (share + (0.5 * perTrial)) / (1 + perTrial);
        var halfWidth = z / (1 + perTrial) * Math.Sqrt((share * (1 - share) / trials) + (0.25 * perTrial / trials));
        return new ConfidenceLimits(
            count == 0 ? 0 : centre - halfWidth,
            count == trials ? 1 : centre + halfWidth);
    }
}
