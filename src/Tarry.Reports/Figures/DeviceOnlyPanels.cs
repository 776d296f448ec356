using Tarry.Findings.Conditions;
using Tarry.Findings.DeviceOnly;

namespace Tarry.Reports.Figures;

/// <summary>The two panels of the device alone: latencies as measured, and the delay without the chain; a millisecond is as wide in both.</summary>
internal sealed record DeviceOnlyPanels(Scale Measured, Ticks MeasuredTicks, Scale Alone, Ticks AloneTicks, bool IsCut)
{
    private const double PanelGap = 2;

    /// <summary>Panels between two places.</summary>
    public static DeviceOnlyPanels Of(IReadOnlyList<RankedRow> rows, double left, double right, int steps)
    {
        List<DensityCurve> measured = [.. rows.Select(row => row.Condition.Density).OfType<DensityCurve>()];
        List<DensityCurve> alone = [.. rows.Select(row => row.Condition.DeviceOnly?.Density).OfType<DeviceOnlyDensity>().Select(Curve)];
        var (measuredLow, measuredHigh) = Range(measured);
        var (aloneLow, aloneHigh) = Range(alone);
        aloneLow = Math.Min(0, aloneLow);
        var all = measuredHigh - measuredLow + aloneHigh - aloneLow;
        int Steps(double span) => Math.Max(2, (int)Math.Round(steps * span / all));
        var measuredTicks = Ticks.Cover(measuredLow, measuredHigh, Steps(measuredHigh - measuredLow));
        var aloneTicks = Ticks.Cover(aloneLow, aloneHigh, Steps(aloneHigh - aloneLow));
        var perMs = (right - left - PanelGap) / (measuredTicks.High - measuredTicks.Low + aloneTicks.High - aloneTicks.Low);
        var split = left + (perMs * (measuredTicks.High - measuredTicks.Low));
        return new(
            Scale.Linear(measuredTicks.Low, measuredTicks.High, left, split),
            measuredTicks,
            Scale.Linear(aloneTicks.Low, aloneTicks.High, split + PanelGap, right),
            aloneTicks,
            measured.Concat(alone).Any(curve => EndSeen(curve) > (alone.Contains(curve) ? aloneTicks.High : measuredTicks.High)));
    }

    /// <summary>A density of the device alone as a curve.</summary>
    public static DensityCurve Curve(DeviceOnlyDensity density) => new(density.FromMs, density.StepMs, density.PerMs, 0);

    private static (double Low, double High) Range(List<DensityCurve> curves) => curves.Count == 0
        ? (0, 1)
        : (curves.Min(StartSeen), SharedTail.CutMs(curves) ?? curves.Max(EndSeen));

    private static double StartSeen(DensityCurve curve) => curve.FromMs + (curve.StepMs * Seen(curve.PerMs));

    private static double EndSeen(DensityCurve curve) => curve.FromMs + (curve.StepMs * (curve.PerMs.Count - 1 - Seen([.. curve.PerMs.Reverse()])));

    // Kernels and iterations reach a little beyond the outermost trial; what would be no higher than a stroke is not seen.
    private static int Seen(IReadOnlyList<double> densities)
    {
        var threshold = densities.Max() / 200;
        return Math.Min(densities.TakeWhile(density => density < threshold).Count(), densities.Count - 1);
    }
}
