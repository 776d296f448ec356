using Tarry.Statistics.Circles;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>Peak-to-valley deviation without the flattery of noise: where the peak and the valley stand is told by the other turns, how high they are by the turn itself.</summary>
/// <remarks>
/// The largest of many noisy deviations is too large; that of the mean over turns still is. A turn that had no say in the choice is not:
/// of a true circle it gives 0 in the mean. A choice at a place other than the true extreme makes the value a little too small.
/// Leave-one-out of M. Stone, J. R. Stat. Soc. B 36 (1974); its use here is Tarry's own, settled by simulation.
/// </remarks>
internal static class RadialExtremes
{
    private const int Smoothing = 2;

    /// <summary>One value a turn.</summary>
    /// <param name="profiles">The turns, two or more.</param>
    /// <param name="fit">The reference circle of a profile.</param>
    public static double[] Of(IReadOnlyList<RimProfile> profiles, Func<RimProfile, Circle> fit)
    {
        var values = new double[profiles.Count];
        for (var left = 0; left < values.Length; left++)
        {
            var others = RimProfile.MeanOf([.. profiles.Where((_, index) => index != left)]);
            var circle = fit(others);
            var (peak, valley) = Places(others, circle);
            var own = profiles[left];
            values[left] = circle.DistanceOf(own.X[peak], own.Y[peak]) - circle.DistanceOf(own.X[valley], own.Y[valley]);
        }

        return values;
    }

    // A single bin is noisy; its neighbours vouch for it.
    private static (int Peak, int Valley) Places(RimProfile profile, Circle circle)
    {
        var bins = profile.Bins;
        var smoothing = bins >= 120 ? Smoothing : 0;
        var (peak, valley) = (0, 0);
        double highest = double.NegativeInfinity, lowest = double.PositiveInfinity;
        for (var bin = 0; bin < bins; bin++)
        {
            var sum = 0.0;
            for (var k = -smoothing; k <= smoothing; k++)
            {
                var at = (bin + k + bins) % bins;
                sum += circle.DistanceOf(profile.X[at], profile.Y[at]);
            }

            (peak, highest) = sum > highest ? (bin, sum) : (peak, highest);
            (valley, lowest) = sum < lowest ? (bin, sum) : (valley, lowest);
        }

        return (peak, valley);
    }
}
