using Tarry.Findings.Conditions;

namespace Tarry.Reports.Figures;

/// <summary>The two panels of the ridge: the shared axis, and beyond its break the late tail on a logarithmic one.</summary>
internal sealed class RidgePanels
{
    private const double TailShare = 0.24;
    private const double PanelGap = 1.2;

    private RidgePanels(Ticks ticks, double? cutMs, double endMs, Scale main, Scale? tail) =>
        (Ticks, CutMs, EndMs, Main, Tail) = (ticks, cutMs, endMs, main, tail);

    /// <summary>The ticks of the shared axis.</summary>
    public Ticks Ticks { get; }

    /// <summary>Where the shared axis is broken; null where it is not.</summary>
    public double? CutMs { get; }

    /// <summary>The last latency shown.</summary>
    public double EndMs { get; }

    /// <summary>The shared axis.</summary>
    public Scale Main { get; }

    /// <summary>The tail's axis; null where the shared one is not broken.</summary>
    public Scale? Tail { get; }

    /// <summary>Panels between two places.</summary>
    public static RidgePanels Of(IReadOnlyList<DensityCurve> curves, double left, double right, int steps)
    {
        var cut = SharedTail.CutMs(curves);
        var end = curves.Count == 0 ? 1 : SharedTail.EndMs(curves);
        var low = curves.Count == 0 ? 0 : Math.Max(0, curves.Min(Start));
        var high = cut ?? end;
        var ticks = Ticks.Cover(low < 0.4 * high ? 0 : low, high, steps);
        if (cut is null || end <= ticks.High)
        {
            return new(ticks, null, end, Scale.Linear(ticks.Low, ticks.High, left, right), null);
        }

        var split = right - ((right - left) * TailShare);
        return new(
            ticks,
            ticks.High,
            end,
            Scale.Linear(ticks.Low, ticks.High, left, split - PanelGap),
            Scale.Logarithmic(ticks.High, end, split, right));
    }

    // Kernels reach a little below the first trial; the axis begins where a density is seen.
    private static double Start(DensityCurve curve)
    {
        var threshold = curve.PerMs.Max() / 200;
        var first = curve.PerMs.TakeWhile(density => density < threshold).Count();
        return curve.FromMs + (curve.StepMs * Math.Min(first, curve.PerMs.Count - 1));
    }
}
