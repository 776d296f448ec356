using System.Xml.Linq;

namespace Tarry.Reports.Figures;

/// <summary>A figure of rows on one axis, with the name, verdict and basis of each to the left of its marks and its value to the right, or above them where it is narrow.</summary>
/// <param name="words">What the figure says.</param>
/// <param name="axisOf">The axis between a left and a right end.</param>
/// <param name="ticks">Its ticks where the figure is wide, and where it is narrow.</param>
/// <param name="axisTitle">Its title.</param>
internal sealed class StickRows(FigureWords words, Func<double, double, Scale> axisOf, (IReadOnlyList<double> Wide, IReadOnlyList<double> Narrow) ticks, string axisTitle)
{
    private const double DetailSize = 0.85;
    private const double DetailRoom = 14;
    private const double NarrowLabels = 5;
    private const int MostLines = 4;

    private static readonly (double Least, double Greatest, double Narrow) Pitches = (6.5, 8, 11);

    /// <summary>Draws the figure.</summary>
    /// <param name="style">What it is drawn for.</param>
    /// <param name="rows">The rows, at least one, and what each shows.</param>
    /// <param name="draw">Draws the marks of a row between its top and its bottom.</param>
    public XElement Draw<T>(FigureStyle style, IReadOnlyList<(StickRow Label, T Shown)> rows, Action<Canvas, Scale, double, double, T> draw)
    {
        var rightColumn = rows.Max(row => Math.Max(TextFit.Width(row.Label.Value), 0.9 * TextFit.Width(row.Label.Bounds)));
        var layout = new RowLayout(style, [.. rows.Select(row => row.Label.Name)], 0, Pitches, DetailRoom, rightColumn, 0, words.Heading, words.Notes);
        var canvas = new Canvas(layout.Style, layout.HeightEm, words.Name, words.Title, words.Description);
        var scale = axisOf(layout.PlotLeft, layout.PlotRight);
        layout.DrawHeading(canvas);
        for (var index = 0; index < rows.Count; index++)
        {
            var top = layout.RowsTop + (index * layout.Pitch);
            var (from, to) = (top + (layout.IsNarrow ? NarrowLabels : 0.4), top + layout.Pitch - 0.5);
            canvas.Box(layout.PlotLeft, from, layout.PlotRight - layout.PlotLeft, to - from, "band");
            canvas.Lines((layout.IsNarrow ? ticks.Narrow : ticks.Wide).Select(tick => (scale.At(tick), from, scale.At(tick), to)), "rule", 0.06);
            draw(canvas, scale, from, to, rows[index].Shown);
            DrawLabel(canvas, layout, rows[index].Label, top, (from + to) / 2);
        }

        AxisDrawing.Draw(canvas, scale, layout.IsNarrow ? ticks.Narrow : ticks.Wide, 0, layout.RowsBottom, layout.RowsBottom, axisTitle, layout.PlotRight - layout.PlotLeft);
        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    private static void DrawLabel(Canvas canvas, RowLayout layout, StickRow row, double top, double middle)
    {
        var css = row.Verdict.IsFault ? "strong" : "soft";
        if (layout.IsNarrow)
        {
            canvas.Text(layout.LabelLeft, top + 1.2, row.Name, "strong", room: layout.LabelRoom / 1.1);
            canvas.Text(layout.LabelLeft, top + 2.3, $"{row.Value}{(row.Bounds.Length > 0 ? $" ({row.Bounds})" : "")}", "soft", size: DetailSize, room: layout.LabelRoom);
            canvas.Text(layout.LabelLeft, top + 3.4, row.Verdict.Text, css, size: DetailSize, room: layout.LabelRoom / 1.1);
            canvas.Text(layout.LabelLeft, top + 4.5, row.Basis, "soft", size: DetailSize, room: layout.LabelRoom);
            return;
        }

        var room = layout.LabelRoom / DetailSize / 1.1;
        List<(string Text, string CssClass)> lines = [.. TextFit.Lines(row.Verdict.Text, room).Select(line => (line, css)), .. TextFit.Lines(row.Basis, room).Select(line => (line, "soft"))];
        var first = middle + 0.3 - (0.5 * Math.Min(lines.Count, MostLines));
        canvas.Text(layout.LabelLeft, first, row.Name, "strong", room: layout.LabelRoom / 1.1);
        for (var line = 0; line < Math.Min(lines.Count, MostLines); line++)
        {
            canvas.Text(layout.LabelLeft, first + 1.1 + (line * 1.05), lines[line].Text, lines[line].CssClass, size: DetailSize);
        }

        canvas.Text(layout.Right, middle - 0.1, row.Value, anchor: Anchor.End);
        canvas.Text(layout.Right, middle + 1, row.Bounds, "soft", Anchor.End, 0.9);
    }
}
