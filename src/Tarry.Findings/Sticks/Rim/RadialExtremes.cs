using Tarry.Statistics.Circles;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>Peak-to-valley deviation without the flattery of noise: where the peak and the valley stand is told by the other turns, how high they are by the turn itself.</summary>
/// <remarks>
/// The largest of many noisy deviations is too large; that of the mean over turns still is. A turn that had no say in the choice is not:
/// of a true circle it gives 0 in the mean. A choice at a place other than the true extreme makes the value a little too small. So does a
/// corner: with s from bin to bin to either side of it, its bin says s/4 too little where the corner is in the middle, s/2 where it is at an
/// edge, and stands out from its neighbours by 3 s/4 and s/2: by no less.
/// Leave-one-out of M. Stone, J. R. Stat. Soc. B 36 (1974); its use here is Tarry's own, settled by simulation.
/// </remarks>
internal static class RadialExtremes
{
    private const int Smoothing = 2;

    // The positions in a bin need not lie evenly about its middle.
    private const double Uneven = 1.5;

    /// <summary>One value a turn, and by how much bins may blunt a corner of the gate at most.</summary>
    /// <param name="profiles">The turns, two or more.</param>
    /// <param name="fit">The reference circle of a profile.</param>
    public static (double[] Values, double Blunted) Of(IReadOnlyList<RimProfile> profiles, Func<RimProfile, Circle> fit)
    {
        var (values, atPeak, atValley) = (new double[profiles.Count], 0.0, 0.0);
        for (var left = 0; left < values.Length; left++)
        {
            var others = RimProfile.MeanOf([.. profiles.Where((_, index) => index != left)]);
            var circle = fit(others);
            var (peak, valley) = Places(others, circle);
            var own = profiles[left];
            double At(int bin) => circle.DistanceOf(own.X[(bin + own.Bins) % own.Bins], own.Y[(bin + own.Bins) % own.Bins]);
            double Bend(int bin) => Uneven * (At(bin) - ((At(bin - 1) + At(bin + 1)) / 2));
            values[left] = At(peak) - At(valley);
            atPeak += Bend(peak) / values.Length;
            atValley -= Bend(valley) / values.Length;
        }

        return (values, Math.Max(0, atPeak) + Math.Max(0, atValley));
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
