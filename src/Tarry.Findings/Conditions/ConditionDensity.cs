using Tarry.Statistics.Densities;

namespace Tarry.Findings.Conditions;

/// <summary>The density of a condition's latencies, for figures.</summary>
internal static class ConditionDensity
{
    private const int FewestResponses = 50;
    private const int FewestPoints = 1024;
    private const int MostPoints = 65_536;
    private const int StepsPerBandwidth = 2;
    private const double FinestBandwidthMs = 0.02;

    public static DensityCurve? Of(PooledSample pool)
    {
        var sorted = pool.Sorted;
        if (sorted.Length < FewestResponses)
        {
            return null;
        }

        var bandwidth = Math.Max(FinestBandwidthMs, Bandwidth.SheatherJones(sorted) ?? Bandwidth.NormalReference(sorted) ?? 0);

        // Between points further apart than a kernel is wide, a response that came seconds late would hide all the others.
        bandwidth = Math.Max(bandwidth, StepsPerBandwidth * (sorted[^1] - sorted[0]) / (MostPoints - (8 * StepsPerBandwidth) - 1));
        var from = sorted[0] - (4 * bandwidth);
        var to = sorted[^1] + (4 * bandwidth);
        var points = (int)Math.Clamp(Math.Ceiling(StepsPerBandwidth * (to - from) / bandwidth) + 1, FewestPoints, MostPoints);
        return new DensityCurve(from, (to - from) / (points - 1), KernelDensity.OnGrid(sorted, from, to, points, bandwidth), bandwidth);
    }
}
