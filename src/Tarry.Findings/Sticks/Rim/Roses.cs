using Tarry.Findings.Conditions;
using Tarry.Statistics.Circles;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Intervals;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>Makes the rose of a condition from the turns of its sessions: over sessions where there are several, else over turns.</summary>
internal static class Roses
{
    public const int Sectors = 72;

    public static StickRose? Of(IReadOnlyList<RimUnits> sessions)
    {
        if (sessions.Count == 0)
        {
            return null;
        }

        var replicates = sessions.Count > 1 ? [.. sessions.Select(session => RimProfile.MeanOf(session.Profiles))] : sessions[0].Profiles;
        var mean = sessions.Select(session => RimProfile.MeanOf(session.Profiles)).ToList();
        var circle = GeometricCircle.Fit([.. mean.SelectMany(profile => profile.X)], [.. mean.SelectMany(profile => profile.Y)]);
        var (distances, low, high) = (new double[Sectors], new double[Sectors], new double[Sectors]);
        for (var sector = 0; sector < Sectors; sector++)
        {
            var values = replicates.Select(profile => Distance(profile, circle, sector)).ToArray();
            distances[sector] = Moments.Mean(values);
            var limits = values.Length < 2
                ? new Statistics.ConfidenceLimits(distances[sector], distances[sector])
                : StudentInterval.Of(distances[sector], Moments.StandardDeviation(values) / Math.Sqrt(values.Length), values.Length - 1, Estimates.Level);
            (low[sector], high[sector]) = (limits.Low, limits.High);
        }

        return new StickRose(distances, low, high, circle, sessions.Sum(session => session.Count), sessions.Count, Estimates.Level);
    }

    // The mean of the bins of a sector; of bins wider than one, the bin that holds it.
    private static double Distance(RimProfile profile, Circle circle, int sector)
    {
        var (from, to) = (sector * profile.Bins / Sectors, Math.Max((sector + 1) * profile.Bins / Sectors, (sector * profile.Bins / Sectors) + 1));
        var sum = 0.0;
        for (var bin = from; bin < to; bin++)
        {
            sum += circle.DistanceOf(profile.X[bin], profile.Y[bin]);
        }

        return sum / (to - from);
    }
}
