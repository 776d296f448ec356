using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The axis below a panel: grid lines, tick labels as far as there is room, title.</summary>
internal static class AxisDrawing
{
    private const double LabelSize = 0.9;
    private const double LeastGap = 0.4;

    /// <summary>Draws an axis under the panel between top and bottom.</summary>
    public static void Draw(Canvas canvas, Scale scale, IReadOnlyList<double> ticks, int decimals, double top, double bottom, string title, double titleRoom)
    {
        foreach (var tick in ticks)
        {
            canvas.Line(scale.At(tick), top, scale.At(tick), bottom, "rule", 0.06);
        }

        canvas.Line(scale.At(scale.Low), bottom, scale.At(scale.High), bottom, "axis", 0.07);
        DrawLabels(canvas, scale, ticks, decimals, bottom + 1.15);

        canvas.Text((scale.At(scale.Low) + scale.At(scale.High)) / 2, bottom + 2.4, title, "soft", Anchor.Middle, LabelSize, titleRoom);
    }

    private static void DrawLabels(Canvas canvas, Scale scale, IReadOnlyList<double> ticks, int decimals, double baseline)
    {
        var nextFree = double.NegativeInfinity;
        foreach (var tick in ticks)
        {
            var label = Numbers.Fixed(tick, decimals);
            var half = LabelSize * TextFit.Width(label) / 2;
            var x = Math.Clamp(scale.At(tick), half, canvas.WidthEm - half);
            if (x - half >= nextFree)
            {
                canvas.Text(x, baseline, label, "soft", Anchor.Middle, LabelSize);
                nextFree = x + half + LeastGap;
            }
        }
    }
}
