using Tarry.Statistics.Densities;

namespace Tarry.Findings.Conditions;

/// <summary>The density of a condition's latencies, for figures.</summary>
internal static class ConditionDensity
{
    private const int FewestResponses = 50;
    private const int Points = 1024;
    private const double FinestBandwidthMs = 0.02;

    public static DensityCurve? Of(PooledSample pool)
    {
        var sorted = pool.Sorted;
        if (sorted.Length < FewestResponses)
        {
            return null;
        }

        var bandwidth = Math.Max(FinestBandwidthMs, Bandwidth.SheatherJones(sorted) ?? Bandwidth.NormalReference(sorted) ?? 0);
        var from = sorted[0] - (4 * bandwidth);
        var to = sorted[^1] + (4 * bandwidth);
        return new DensityCurve(from, (to - from) / (Points - 1), KernelDensity.OnGrid(sorted, from, to, Points, bandwidth), bandwidth);
    }
}
