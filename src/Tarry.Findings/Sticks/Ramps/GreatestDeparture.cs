namespace Tarry.Findings.Sticks.Ramps;

/// <summary>The greatest of many departures without the flattery of noise: the other replicates tell where it is, the replicate itself how large.</summary>
/// <remarks>As for radial deviations: of departures that are none it gives 0 in the mean.</remarks>
internal static class GreatestDeparture
{
    /// <summary>One value a replicate.</summary>
    /// <param name="departures">By replicate, the departures at the same places.</param>
    public static double[] Of(IReadOnlyList<double[]> departures)
    {
        var places = departures[0].Length;
        var sums = new double[places];
        foreach (var replicate in departures)
        {
            for (var place = 0; place < places; place++)
            {
                sums[place] += replicate[place];
            }
        }

        return [.. departures.Select(own =>
        {
            var (at, greatest) = (0, 0.0);
            for (var place = 0; place < places; place++)
            {
                var others = sums[place] - own[place];
                (at, greatest) = Math.Abs(others) > Math.Abs(greatest) ? (place, others) : (at, greatest);
            }

            return Math.Sign(greatest) * own[at];
        })];
    }
}
