using Tarry.Statistics.Descriptives;

namespace Tarry.Statistics.Components;

/// <summary>How much of the variance lies between groups and how much within them: one-way random effects, by analysis of variance.</summary>
/// <remarks>
/// within = MSW; between = max(0, (MSB - MSW) / n0), n0 = (N - sum n_i^2 / N) / (g - 1) (S. R. Searle, G. Casella,
/// C. E. McCulloch, "Variance Components", 1992, 3.6; ISO 5725-2:1994, 7.4.5, calls their roots s_L and s_r). Equal to REML where
/// groups are equally large and MSB > MSW. Assumes that trials of a group are independent of each other.
/// </remarks>
/// <param name="Mean">The mean of all values.</param>
/// <param name="BetweenMeanSquare">MSB.</param>
/// <param name="WithinMeanSquare">MSW.</param>
/// <param name="EffectiveGroupSize">n0.</param>
public sealed record OneWayComponents(double Mean, double BetweenMeanSquare, double WithinMeanSquare, double EffectiveGroupSize)
{
    /// <summary>The variance between groups.</summary>
    public double Between => Math.Max(0, (BetweenMeanSquare - WithinMeanSquare) / EffectiveGroupSize);

    /// <summary>The variance within groups.</summary>
    public double Within => WithinMeanSquare;

    /// <summary>From the values of each group.</summary>
    /// <param name="groups">At least two groups, each with a value, one of them with two.</param>
    /// <exception cref="ArgumentException">There are fewer groups or values.</exception>
    public static OneWayComponents Of(IReadOnlyList<double[]> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var total = groups.Sum(group => group.Length);
        if (groups.Count < 2 || groups.Any(group => group.Length == 0) || total <= groups.Count)
        {
            throw new ArgumentException($"{groups.Count} groups of {total} values in all; it takes two groups, none empty, and two values in one of them.", nameof(groups));
        }

        var mean = groups.Sum(group => group.Sum()) / total;
        double between = 0, within = 0, squaredSizes = 0;
        foreach (var group in groups)
        {
            var own = Moments.Mean(group);
            between += group.Length * (own - mean) * (own - mean);
            within += group.Length < 2 ? 0 : Moments.Variance(group) * (group.Length - 1);
            squaredSizes += (double)group.Length * group.Length;
        }

        return new OneWayComponents(
            mean,
            between / (groups.Count - 1),
            within / (total - groups.Count),
            (total - (squaredSizes / total)) / (groups.Count - 1));
    }
}
