using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The ladder of quantiles: a row a condition, in it a rung a quantile with its interval, the lowest quantile lowest.</summary>
public static class LadderFigure
{
    private const double NarrowLadder = 2.1;

    private static readonly (double Least, double Greatest, double Narrow) Pitches = (3.1, 5, 5.8);

    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);

    internal static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var rows = RankedRow.Of(document);
        var ticks = LadderRungs.Cover(rows, style.IsNarrow ? 5 : 10);
        var layout = new RowLayout(style, rows, Pitches, 0, RowLabels.RightColumn(rows, Middle, Top), 0, $"Ladder of quantiles: {document.Title}", Notes(rows, ticks));
        var canvas = new Canvas(layout.Style, layout.HeightEm, "ladder", $"{document.Title}: quantiles of latency", Description(rows));
        var scale = Scale.Linear(ticks.Low, ticks.High, layout.PlotLeft, layout.PlotRight);

        layout.DrawHeading(canvas);
        layout.DrawHeads(canvas);
        if (!layout.IsNarrow)
        {
            canvas.Text(layout.Right, layout.RowsTop - 0.5, "p50 and p99 with intervals, ms", "soft", Anchor.End, 0.9);
        }

        AxisDrawing.Draw(canvas, scale, ticks.Values, ticks.Decimals, layout.RowsTop, layout.RowsBottom, "latency, ms", layout.PlotRight - layout.PlotLeft);
        for (var index = 0; index < rows.Count; index++)
        {
            DrawRow(canvas, rows[index], scale, layout, layout.RowsTop + (index * layout.Pitch), index > 0);
        }

        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    internal static string Description(IReadOnlyList<RankedRow> rows)
    {
        var lines = rows.Select(row =>
        {
            var rungs = LadderRungs.Of(row.Condition)
                .Select((rung, index) => $"{LadderRungs.Names[index]} {EstimateWording.ClaimOrLack(rung, Quantity.Latency)}");
            return $"{row.Condition.Id}: {string.Join("; ", rungs)}.";
        });
        return $"Quantiles of latency, soonest mean first. {string.Join(' ', lines)}";
    }

    private static List<string> Notes(IReadOnlyList<RankedRow> rows, Ticks ticks)
    {
        var known = rows.SelectMany(row => LadderRungs.Of(row.Condition)).OfType<Estimate<Latency>>().ToList();
        var levels = Listing.And([.. known.Select(rung => rung.Level).Distinct().Order().Select(Numbers.Level)]);
        var notes = new List<string>
        {
            FigureNotes.Basis(rows),
            $"Rungs from the lowest up: {Listing.And([.. LadderRungs.Names])}{(levels.Length == 0 ? "" : $", each with its {levels} interval")}; the ring is p50.",
            "A missed trial counts as later than any response.",
        };
        if (known.Any(rung => rung.Sessions == 1))
        {
            notes.Add("Dashed: one sitting; the interval holds within that sitting only.");
        }

        if (known.Count < rows.Count * LadderRungs.Names.Count)
        {
            notes.Add("A rung that is not drawn has too few trials.");
        }

        var scale = Scale.Linear(ticks.Low, ticks.High, 0, 1);
        if (rows.Any(row => LadderRungs.IsCut(scale, row)))
        {
            notes.Add("An arrow head: the rung goes on beyond the axis.");
        }

        if (ticks.Low > 0)
        {
            notes.Add("The axis does not begin at zero.");
        }

        return notes;
    }

    private static string Middle(RankedRow row) => Rung("p50", row.Condition.Median);

    private static string Top(RankedRow row) => Rung("p99", row.Condition.P99);

    private static string Rung(string name, EstimateOutcome<Latency> outcome) => outcome is Estimate<Latency> rung
        ? $"{name} {EstimateWording.Value(rung, Quantity.Latency)} ({EstimateWording.Bounds(rung, Quantity.Latency)})"
        : $"{name}: not enough data";

    private static void DrawRow(Canvas canvas, RankedRow row, Scale scale, RowLayout layout, double top, bool ruled)
    {
        if (ruled)
        {
            canvas.Line(layout.IsNarrow ? layout.LabelLeft : RowLayout.Margin, top, layout.Right, top, "rule", 0.06);
        }

        var middle = layout.IsNarrow && row.Condition.Median is Estimate<Latency> median ? $"p50 {EstimateWording.Value(median, Quantity.Latency)}" : Middle(row);
        RowLabels.Draw(canvas, row, layout, top, top + (layout.Pitch / 2), middle, Top(row));
        var bottom = top + layout.Pitch - 0.45;
        var height = layout.IsNarrow ? NarrowLadder : layout.Pitch - 0.9;
        LadderMarks.Draw(canvas, scale, row, bottom, height);
    }
}
