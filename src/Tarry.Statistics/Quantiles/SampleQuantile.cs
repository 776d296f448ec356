namespace Tarry.Statistics.Quantiles;

/// <summary>Sample quantiles, in which a miss is later than every response.</summary>
public static class SampleQuantile
{
    /// <summary>
    /// The sample quantile of type 7, or another: (1 - g) x_j + g x_(j+1) with j + g = n p + m and the m of the type
    /// (R. J. Hyndman, Y. Fan, Amer. Statist. 50, 1996).
    /// </summary>
    /// <param name="sorted">The values that arrived, ascending, in any unit.</param>
    /// <param name="level">The share of trials below, 0 to 1.</param>
    /// <param name="missed">How many trials had no response; they count as +infinity.</param>
    /// <param name="type">The definition.</param>
    /// <returns>The quantile, or null where it falls among the misses or there is no trial: then it is known only to be later than every response.</returns>
    /// <exception cref="ArgumentException">The values are not ascending where they are looked at.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level or the number of misses is out of range.</exception>
    public static double? Of(ReadOnlySpan<double> sorted, double level, int missed = 0, QuantileType type = QuantileType.ModalPosition)
    {
        if (!(level is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(level), level, $"level is {level}; it lies between 0 and 1. Give the 95th percentile as 0.95.");
        }

        Argument.RequireAtLeast(missed, 0, nameof(missed), "Count the trials without a response.");
        var trials = (double)sorted.Length + missed;
        if (trials == 0)
        {
            return null;
        }

        var (position, weight) = Position(trials, level, type);
        var low = Math.Clamp(position, 1, trials);
        var high = Math.Clamp(position + 1, 1, trials);
        if ((weight < 1 && low > sorted.Length) || (weight > 0 && high > sorted.Length))
        {
            return null;
        }

        if (weight is 0 or 1)
        {
            return sorted[(int)(weight == 0 ? low : high) - 1];
        }

        var (below, above) = (sorted[(int)low - 1], sorted[(int)high - 1]);
        return above >= below
            ? below + (weight * (above - below))
            : throw new ArgumentException($"sorted holds {below} before {above}; sort the values ascending first.", nameof(sorted));
    }

    /// <summary>The rank below the quantile and how far it lies towards the next.</summary>
    private static (double Position, double Weight) Position(double trials, double level, QuantileType type)
    {
        var offset = type switch
        {
            QuantileType.InverseOfDistribution or QuantileType.AveragedInverseOfDistribution or QuantileType.InterpolatedDistribution => 0,
            QuantileType.NearestEven => -0.5,
            QuantileType.Midway => 0.5,
            QuantileType.ExpectedPosition => level,
            QuantileType.ModalPosition => 1 - level,
            QuantileType.MedianPosition => (level + 1) / 3,
            QuantileType.NormalUnbiased => (level / 4) + (3.0 / 8),
            _ => throw new ArgumentOutOfRangeException(nameof(type), type, $"type is {type}; Hyndman and Fan number them 1 to 9."),
        };

        // n p is rarely exact in binary: a product within rounding of a whole number is that number, as in R.
        var product = (trials * level) + offset;
        const double rounding = 4 * 2.220446049250313e-16;
        var position = Math.Floor(product + (rounding * Math.Max(1, product)));
        var fraction = product - position;
        if (Math.Abs(fraction) < rounding * Math.Max(1, product))
        {
            fraction = 0;
        }

        return type switch
        {
            QuantileType.InverseOfDistribution => (position, fraction > 0 ? 1 : 0),
            QuantileType.AveragedInverseOfDistribution => (position, fraction > 0 ? 1 : 0.5),
            QuantileType.NearestEven => (position, fraction == 0 && position % 2 == 0 ? 0 : 1),
            _ => (position, fraction),
        };
    }
}
