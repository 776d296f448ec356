using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The axis below a panel: grid lines, tick labels, title.</summary>
internal static class AxisDrawing
{
    private const double LabelSize = 0.9;

    /// <summary>Draws an axis under the panel between top and bottom.</summary>
    public static void Draw(Canvas canvas, Scale scale, IReadOnlyList<double> ticks, int decimals, double top, double bottom, string title, double titleRoom)
    {
        foreach (var tick in ticks)
        {
            canvas.Line(scale.At(tick), top, scale.At(tick), bottom, "rule", 0.06);
        }

        canvas.Line(scale.At(scale.Low), bottom, scale.At(scale.High), bottom, "axis", 0.07);
        foreach (var tick in ticks)
        {
            canvas.Text(scale.At(tick), bottom + 1.15, Numbers.Fixed(tick, decimals), "soft", Anchor.Middle, LabelSize);
        }

        canvas.Text((scale.At(scale.Low) + scale.At(scale.High)) / 2, bottom + 2.4, title, "soft", Anchor.Middle, LabelSize, titleRoom);
    }
}
