using Tarry.Findings.Conditions;

namespace Tarry.Reports.Figures;

/// <summary>One density of the ridge: filled, with only its top edge stroked.</summary>
internal static class RidgeCurve
{
    /// <summary>The part on the shared axis, its highest point at the row's height.</summary>
    public static void DrawMain(Canvas canvas, DensityCurve curve, Scale scale, double baseline, double height, RankedRow row)
    {
        var peak = curve.PerMs.Max();
        if (peak > 0)
        {
            Draw(canvas, curve, scale, baseline, point => height * point.PerMs / peak, row, row.IsOpen);
        }
    }

    /// <summary>The part beyond the break. On a logarithmic axis the height is latency times density, so that area is share of trials.</summary>
    /// <param name="canvas">Where to draw.</param>
    /// <param name="curve">The density.</param>
    /// <param name="scale">The tail's axis.</param>
    /// <param name="baseline">The row's base.</param>
    /// <param name="height">The height of the tallest tail.</param>
    /// <param name="tallest">The greatest <see cref="TailPeak"/> of all rows, so that tails compare.</param>
    /// <param name="row">Whose density it is.</param>
    /// <param name="isOpen">Whether it is drawn open: not filled, and dashed.</param>
    public static void DrawTail(Canvas canvas, DensityCurve curve, Scale scale, double baseline, double height, double tallest, RankedRow row, bool isOpen)
    {
        canvas.Line(scale.At(scale.Low), baseline, scale.At(scale.High), baseline, "rule", 0.06);
        if (tallest > 0)
        {
            Draw(canvas, curve, scale, baseline, point => 0.8 * height * point.Ms * point.PerMs / tallest, row, isOpen);
        }
    }

    /// <summary>The greatest latency times density beyond a latency.</summary>
    public static double TailPeak(DensityCurve curve, double cutMs) =>
        SharedTail.Between(curve, cutMs, double.PositiveInfinity).Select(point => point.Ms * point.PerMs).DefaultIfEmpty(0).Max();

    private static void Draw(Canvas canvas, DensityCurve curve, Scale scale, double baseline, Func<(double Ms, double PerMs), double> heightOf, RankedRow row, bool isOpen)
    {
        var edge = SharedTail.Between(curve, scale.Low, scale.High).Select(point => (X: scale.At(point.Ms), Y: baseline - heightOf(point))).ToList();
        if (edge.Count < 2)
        {
            return;
        }

        if (!isOpen)
        {
            canvas.Trace([(edge[0].X, baseline), .. edge, (edge[^1].X, baseline)], "pale", closed: true);
        }

        canvas.Trace(edge, row.Condition.IsReference ? "reference-line" : "mark", width: 0.11, dashed: isOpen);
    }
}
