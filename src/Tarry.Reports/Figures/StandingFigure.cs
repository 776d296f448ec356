using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The standing: conditions from soonest to latest mean, as intervals over the span of their latencies, with tie groups.</summary>
public static class StandingFigure
{
    private static readonly (double Least, double Greatest, double Narrow) Pitches = (2.75, 4, 4.4);

    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);

    internal static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var rows = RankedRow.Of(document);
        var ticks = StandingScale.Cover(rows, style.IsNarrow ? 5 : 10);
        var levels = FigureNotes.Levels(rows);
        var legendHeight = StandingLegend.Height((style.Width / style.TextSize) - 2, levels);
        var layout = new RowLayout(style, rows, Pitches, 0, StandingLabels.RightColumn(rows), legendHeight, $"Mean latency: {document.Title}", Notes(rows, ticks));
        var canvas = new Canvas(layout.Style, layout.HeightEm, "standing", $"{document.Title}: standing by mean latency", Description(rows));
        var scale = Scale.Linear(ticks.Low, ticks.High, layout.PlotLeft, layout.PlotRight);

        layout.DrawHeading(canvas);
        StandingLegend.Draw(canvas, layout.LegendTop, RowLayout.Margin, levels);
        layout.DrawHeads(canvas);
        if (!layout.IsNarrow)
        {
            canvas.Text(layout.Right, layout.RowsTop - 0.5, "mean and interval, ms", "soft", Anchor.End, 0.9);
        }

        DrawGroups(canvas, rows, layout);
        AxisDrawing.Draw(canvas, scale, ticks.Values, ticks.Decimals, layout.RowsTop, layout.RowsBottom, "latency, ms", layout.PlotRight - layout.PlotLeft);
        DrawReference(canvas, rows, scale, layout);
        for (var index = 0; index < rows.Count; index++)
        {
            DrawRow(canvas, rows[index], scale, layout, layout.RowsTop + (index * layout.Pitch));
        }

        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    internal static string Description(IReadOnlyList<RankedRow> rows)
    {
        var lines = rows.Select(row =>
        {
            var rank = row.RankRange.Length == 0 ? "" : $", rank {row.RankRange}";
            return $"{row.Condition.Id}{rank}: {EstimateWording.ClaimOrLack(row.Condition.Mean, Quantity.Latency)}.";
        });
        return $"Conditions from soonest to latest mean. {string.Join(' ', lines)}";
    }

    private static List<string> Notes(IReadOnlyList<RankedRow> rows, Ticks ticks)
    {
        var notes = new List<string> { FigureNotes.Evidence(rows) };
        if (Groups(rows).Any(group => group.Count > 1))
        {
            notes.Add("A bracket joins a tie group: its members are not told from its first.");
        }

        if (FigureNotes.Open(rows) is { } open)
        {
            notes.Add(open);
        }

        var scale = Scale.Linear(ticks.Low, ticks.High, 0, 1);
        if (rows.Any(row => StandingMarks.IsCut(scale, row)))
        {
            notes.Add("An arrow head: the mark goes on beyond the axis.");
        }

        if (ticks.Low > 0)
        {
            notes.Add("The axis does not begin at zero.");
        }

        return notes;
    }

    private static void DrawGroups(Canvas canvas, IReadOnlyList<RankedRow> rows, RowLayout layout)
    {
        foreach (var (first, count) in Groups(rows))
        {
            var top = layout.RowsTop + (first * layout.Pitch);
            var height = count * layout.Pitch;
            if ((rows[first].Rank?.Group ?? 0) % 2 == 1)
            {
                canvas.Box(0, top, canvas.WidthEm, height, "band");
            }

            if (count > 1)
            {
                var x = layout.BracketX;
                canvas.Trace([(x + 0.35, top + 0.3), (x, top + 0.3), (x, top + height - 0.3), (x + 0.35, top + height - 0.3)], "axis", width: 0.12);
            }
        }
    }

    private static IEnumerable<(int First, int Count)> Groups(IReadOnlyList<RankedRow> rows)
    {
        for (var first = 0; first < rows.Count;)
        {
            var group = rows[first].Rank?.Group;
            var count = group is null ? 1 : rows.Skip(first).TakeWhile(row => row.Rank?.Group == group).Count();
            yield return (first, count);
            first += count;
        }
    }

    private static void DrawReference(Canvas canvas, IReadOnlyList<RankedRow> rows, Scale scale, RowLayout layout)
    {
        if (rows.FirstOrDefault(row => row.Condition.IsReference)?.Mean is not { } mean)
        {
            return;
        }

        var x = scale.At(mean.Value.Milliseconds);
        DrawReferenceLine(canvas, x, rows.Count, layout);
        var inRightHalf = x > (layout.PlotLeft + layout.PlotRight) / 2;
        canvas.Text(x + (inRightHalf ? 0.3 : -0.3), layout.RowsTop - 0.5, "reference", "reference", inRightHalf ? Anchor.End : Anchor.Start, 0.9);
    }

    private static void DrawReferenceLine(Canvas canvas, double x, int rows, RowLayout layout)
    {
        if (!layout.IsNarrow)
        {
            canvas.Line(x, layout.RowsTop - 0.25, x, layout.RowsBottom, "reference-line", 0.09, dashed: true);
            return;
        }

        // Text stands between the rows' marks; a line through it would hinder reading.
        for (var row = 0; row < rows; row++)
        {
            var middle = StandingLabels.MarksAt(layout, layout.RowsTop + (row * layout.Pitch));
            canvas.Line(x, middle - 0.65, x, middle + 0.65, "reference-line", 0.09);
        }
    }

    private static void DrawRow(Canvas canvas, RankedRow row, Scale scale, RowLayout layout, double top)
    {
        StandingLabels.Draw(canvas, row, layout, top);
        var middle = StandingLabels.MarksAt(layout, top);
        if (row.Mean is null)
        {
            canvas.Text(layout.PlotLeft + 0.4, middle + 0.35, EstimateWording.ClaimOrLack(row.Condition.Mean, Quantity.Latency), "soft", size: 0.9, room: layout.PlotRight - layout.PlotLeft);
        }
        else
        {
            StandingMarks.Draw(canvas, scale, row, middle);
        }
    }
}
