namespace Tarry.Statistics.Comparisons;

/// <summary>
/// Holm's step-down adjustment (S. Holm, Scand. J. Statist. 6, 1979): the chance of even one false "they differ" among
/// all comparisons stays at the level, whatever their dependence.
/// </summary>
public static class HolmAdjustment
{
    /// <summary>Adjusted p values, in the order given: the running maximum of (m - i + 1) p_(i), at most 1.</summary>
    /// <exception cref="ArgumentException">A p is not between 0 and 1.</exception>
    public static double[] Adjust(ReadOnlySpan<double> p)
    {
        var order = new int[p.Length];
        for (var i = 0; i < order.Length; i++)
        {
            if (!(p[i] is >= 0 and <= 1))
            {
                throw new ArgumentException($"p[{i}] is {p[i]}; a probability lies between 0 and 1. Leave out comparisons that could not be made.", nameof(p));
            }

            order[i] = i;
        }

        Array.Sort(p.ToArray(), order);
        var adjusted = new double[p.Length];
        var largest = 0.0;
        for (var i = 0; i < order.Length; i++)
        {
            largest = Math.Max(largest, Math.Min(1, (order.Length - i) * p[order[i]]));
            adjusted[order[i]] = largest;
        }

        return adjusted;
    }
}
