using Tarry.Findings.Conditions;

namespace Tarry.Reports.Figures;

/// <summary>Where the shared axis of densities is broken, so that late responses are seen and do not flatten the rest.</summary>
internal static class SharedTail
{
    private const double CutLevel = 0.995;
    private const double WorthBreaking = 1.25;

    /// <summary>The latency that 99.5 % of all trials, conditions weighted alike, do not exceed; null where what lies beyond is so short that one axis shows it all.</summary>
    public static double? CutMs(IReadOnlyList<DensityCurve> curves)
    {
        if (curves.Count == 0)
        {
            return null;
        }

        var (low, high) = (curves.Min(curve => curve.FromMs), EndMs(curves));
        for (var halving = 0; halving < 60; halving++)
        {
            var middle = (low + high) / 2;
            var below = 1 - curves.Average(curve => ShareBeyond(curve, middle));
            (low, high) = below < CutLevel ? (middle, high) : (low, middle);
        }

        return high > 0 && EndMs(curves) > high * WorthBreaking ? high : null;
    }

    /// <summary>The last latency of any curve.</summary>
    public static double EndMs(IReadOnlyList<DensityCurve> curves) =>
        curves.Max(curve => curve.FromMs + (curve.StepMs * (curve.PerMs.Count - 1)));

    /// <summary>The share of a curve beyond a latency, by the trapezoid rule, of its whole.</summary>
    public static double ShareBeyond(DensityCurve curve, double latencyMs)
    {
        var (beyond, whole) = (0.0, 0.0);
        for (var index = 1; index < curve.PerMs.Count; index++)
        {
            var area = curve.StepMs * (curve.PerMs[index - 1] + curve.PerMs[index]) / 2;
            var right = curve.FromMs + (index * curve.StepMs);
            whole += area;
            beyond += area * Math.Clamp((right - latencyMs) / curve.StepMs, 0, 1);
        }

        return whole > 0 ? beyond / whole : 0;
    }

    /// <summary>The points of a curve between two latencies: latency and density.</summary>
    public static IEnumerable<(double Ms, double PerMs)> Between(DensityCurve curve, double lowMs, double highMs) =>
        curve.PerMs
            .Select((density, index) => (Ms: curve.FromMs + (index * curve.StepMs), PerMs: density))
            .Where(point => point.Ms >= lowMs && point.Ms <= highMs);
}
