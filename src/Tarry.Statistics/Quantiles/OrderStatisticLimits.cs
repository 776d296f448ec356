namespace Tarry.Statistics.Quantiles;

/// <summary>An order-statistic interval in the unit of the values.</summary>
/// <param name="Ranks">The ranks of its ends.</param>
/// <param name="Low">The low end; null where the trials are too few, or where it falls among the misses.</param>
/// <param name="High">The high end; null where the trials are too few, or where it falls among the misses.</param>
public readonly record struct OrderStatisticLimits(OrderStatisticRanks Ranks, double? Low, double? High)
{
    /// <summary>Whether both ends are the same value, as coarse timing makes them: print "tied", not a width of zero.</summary>
    public bool Tied => Low is { } low && High is { } high && low == high;
}
