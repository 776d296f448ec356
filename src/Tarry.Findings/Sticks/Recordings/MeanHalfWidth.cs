using Tarry.Findings.Conditions;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Sticks.Recordings;

/// <summary>Half the width of the interval of a mean: t s / sqrt(n). Sessions are the replicates where there are several, else what one session repeats.</summary>
internal static class MeanHalfWidth
{
    /// <summary>Of the values of sessions; null for one value in all.</summary>
    /// <param name="sessions">The values of each session.</param>
    public static double? Of(IReadOnlyList<IReadOnlyList<double>> sessions)
    {
        double[] replicates = sessions.Count > 1 ? [.. sessions.Select(values => values.Average())] : [.. sessions[0]];
        return replicates.Length < 2
            ? null
            : StudentDistribution.Quantile(0.5 + (Estimates.Level / 2), replicates.Length - 1) * Moments.StandardDeviation(replicates) / Math.Sqrt(replicates.Length);
    }
}
