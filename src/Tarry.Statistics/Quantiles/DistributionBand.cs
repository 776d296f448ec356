namespace Tarry.Statistics.Quantiles;

/// <summary>A confidence band for a whole distribution function, as wide at every value.</summary>
/// <remarks>
/// The empirical distribution function of n independent trials lies within eps of the true one at all values at once with
/// probability of at least the level: P(sup |F_n - F| &gt; eps) &lt;= 2 exp(-2 n eps^2), so eps = sqrt(ln(2 / (1 - level)) / (2 n))
/// (A. Dvoretzky, J. Kiefer, J. Wolfowitz, Ann. Math. Stat. 27, 1956; the constant 2 is P. Massart's, Ann. Probab. 18, 1990). It holds
/// for every n and every distribution, ties included, and is a little wide for small n. Trials are taken as independent: what differs
/// between sittings is not in it.
/// </remarks>
public static class DistributionBand
{
    /// <summary>Half the height of the band, from 0 to 1.</summary>
    /// <param name="trials">How many trials, misses included; one at least.</param>
    /// <param name="confidence">The confidence level, such as 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no trial, or the level is not strictly between 0 and 1.</exception>
    public static double HalfHeight(int trials, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(trials);
        Argument.RequireLevel(confidence, nameof(confidence));
        return Math.Min(1, Math.Sqrt(Math.Log(2 / (1 - confidence)) / (2.0 * trials)));
    }
}
