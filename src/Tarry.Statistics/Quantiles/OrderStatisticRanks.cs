namespace Tarry.Statistics.Quantiles;

/// <summary>Between which order statistics a quantile lies, whatever the shape of the distribution.</summary>
/// <param name="Lower">The rank of the lower limit, from 1; 0 where the trials are too few for a lower limit.</param>
/// <param name="Upper">The rank of the upper limit; one more than <paramref name="Trials"/> where the trials are too few for an upper limit.</param>
/// <param name="Trials">How many trials there are.</param>
/// <param name="Coverage">The probability that the interval holds the quantile of a continuous distribution; with ties it is at least this.</param>
public readonly record struct OrderStatisticRanks(int Lower, int Upper, int Trials, double Coverage)
{
    /// <summary>Whether there is a lower limit.</summary>
    public bool FiniteLower => Lower >= 1;

    /// <summary>Whether there is an upper limit.</summary>
    public bool FiniteUpper => Upper <= Trials;
}
