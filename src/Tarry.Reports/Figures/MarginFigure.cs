using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>Differences over the band of the margin, a row each: what the figures of costs and of pairs have in common.</summary>
internal static class MarginFigure
{
    private const double SmallSize = 0.9;
    private const double NarrowSize = 0.85;
    private const double Indent = 1;
    private const double CapHalf = 0.35;

    private static readonly (double Least, double Greatest, double Narrow) Pitches = (2.6, 4, 4.6);

    /// <summary>The figure.</summary>
    public static XElement Build(FindingsDocument document, FigureStyle style, IReadOnlyList<MarginRow> rows, MarginFigureText text)
    {
        var margin = document.MarginMs;
        var ticks = Cover(rows, margin, style.IsNarrow ? 5 : 9);
        var rightColumn = rows.Count == 0 ? 0 : Math.Max(rows.Max(row => TextFit.Width(row.Numbers)), SmallSize * rows.Max(row => TextFit.Width(row.Verdict)));
        var layout = new RowLayout(style, [.. rows.Select(row => row.Name)], 0, Pitches, Indent, rightColumn, 0, text.Heading, Notes(rows, margin, text.Direction));
        var canvas = new Canvas(layout.Style, layout.HeightEm, text.Name, text.Title, Description(rows, text.Lead));
        var scale = Scale.Linear(ticks.Low, ticks.High, layout.PlotLeft, layout.PlotRight);

        layout.DrawHeading(canvas);
        if (!layout.IsNarrow)
        {
            canvas.Text(layout.LabelLeft, layout.RowsTop - 0.5, text.RowHead, "soft", size: SmallSize);
            canvas.Text(layout.Right, layout.RowsTop - 0.5, text.NumbersHead, "soft", Anchor.End, SmallSize);
        }

        for (var index = 0; index < rows.Count; index++)
        {
            var (top, bottom) = Marks(layout, index);
            canvas.Box(scale.At(-margin), top, scale.At(margin) - scale.At(-margin), bottom - top, "pale");
        }

        AxisDrawing.Draw(canvas, scale, ticks.Values, ticks.Decimals, layout.RowsTop, layout.RowsBottom, text.AxisTitle, layout.PlotRight - layout.PlotLeft);
        for (var index = 0; index < rows.Count; index++)
        {
            DrawRow(canvas, rows, index, scale, layout);
        }

        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    private static Ticks Cover(IReadOnlyList<MarginRow> rows, double margin, int steps)
    {
        var ends = rows.Select(row => row.Cost).OfType<Estimate<LatencyDifference>>()
            .SelectMany(cost => new[] { cost.Interval.Low.Milliseconds, cost.Interval.High.Milliseconds })
            .Concat([-1.2 * margin, 1.2 * margin])
            .ToList();
        return Ticks.Cover(ends.Min(), ends.Max(), steps);
    }

    private static string Description(IReadOnlyList<MarginRow> rows, string lead) =>
        $"{lead} {string.Join(' ', rows.Select(row => $"{row.Name}: {EstimateWording.ClaimOrLack(row.Cost, Quantity.Difference)}; {row.Verdict}."))}";

    private static List<string> Notes(IReadOnlyList<MarginRow> rows, double margin, string direction)
    {
        var notes = new List<string>
        {
            $"The pale band is the margin of {Numbers.Milliseconds(margin)} to either side; {direction}. Intervals at 95{Numbers.NoBreakSpace}%, within sittings.",
        };
        if (rows.Any(row => row.IsPart))
        {
            notes.Add("Indented: the same layer on one device.");
        }

        if (rows.Any(row => row.IsOpen))
        {
            notes.Add("Open dots: nothing is decided yet.");
        }

        return notes;
    }

    private static (double Top, double Bottom) Marks(RowLayout layout, int index)
    {
        var top = layout.RowsTop + (index * layout.Pitch);
        return layout.IsNarrow ? (top + 2.8, top + layout.Pitch - 0.3) : (top + 0.3, top + layout.Pitch - 0.3);
    }

    private static void DrawRow(Canvas canvas, IReadOnlyList<MarginRow> rows, int index, Scale scale, RowLayout layout)
    {
        var row = rows[index];
        var top = layout.RowsTop + (index * layout.Pitch);
        if (index > 0 && !row.IsPart)
        {
            canvas.Line(layout.LabelLeft, top, layout.Right, top, "rule", 0.06);
        }

        DrawLabel(canvas, row, layout, top);
        var marks = Marks(layout, index);
        var y = (marks.Top + marks.Bottom) / 2;
        canvas.Line(scale.At(0), marks.Top, scale.At(0), marks.Bottom, "axis", 0.08);
        if (row.Cost is not Estimate<LatencyDifference> cost)
        {
            return;
        }

        var (low, high) = (scale.At(cost.Interval.Low.Milliseconds), scale.At(cost.Interval.High.Milliseconds));
        var within = cost.Sessions == 1;
        canvas.Line(low, y, high, y, "mark", row.IsPart ? 0.1 : 0.17, dashed: within);
        canvas.Line(low, y - CapHalf, low, y + CapHalf, "mark", 0.12);
        canvas.Line(high, y - CapHalf, high, y + CapHalf, "mark", 0.12);
        canvas.Dot(scale.At(cost.Value.Milliseconds), y, row.IsPart ? 0.2 : 0.28, row.IsOpen ? "mark-open" : "mark-solid");
    }

    private static void DrawLabel(Canvas canvas, MarginRow row, RowLayout layout, double top)
    {
        var left = layout.LabelLeft + (row.IsPart ? Indent : 0);
        var name = row.IsPart ? "" : "strong";
        if (layout.IsNarrow)
        {
            canvas.Text(left, top + 1.3, row.Name, name, room: layout.Right - left);
            canvas.Text(left, top + 2.4, $"{row.Numbers}; {row.Verdict}", "soft", size: NarrowSize, room: layout.Right - left);
            return;
        }

        var middle = top + (layout.Pitch / 2);
        canvas.Text(left, middle + 0.35, row.Name, name, room: layout.LabelRoom - (left - layout.LabelLeft));
        canvas.Text(layout.Right, middle - 0.15, row.Numbers, anchor: Anchor.End);
        canvas.Text(layout.Right, middle + 0.95, row.Verdict, "soft", Anchor.End, SmallSize);
    }
}
