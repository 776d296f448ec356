using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.ReportIntervals;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The fold: latencies over when in the report interval the press came, and responses about the frame or slot that carried them, a row a condition.</summary>
public static class FoldFigure
{
    private const double PanelGap = 2;
    private const double FirstPanelShare = 0.6;

    private static readonly (double Least, double Greatest, double Narrow) Pitches = (3.1, 5, 5.8);

    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);

    /// <summary>Whether a study has a report interval to fold over.</summary>
    public static bool IsWorthDrawing(FindingsDocument document) => document.Conditions.Any(condition => condition.ReportInterval?.Fold is not null);

    internal static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var all = RankedRow.Of(document);
        IReadOnlyList<RankedRow> rows = [.. all.Where(row => row.Condition.ReportInterval?.Fold is not null)];
        var layout = new RowLayout(style, rows, Pitches, 0, RowLabels.RightColumn(rows, Interval, Frame), 0, $"The fold: {document.Title}", Notes(rows, all.Count - rows.Count));
        var canvas = new Canvas(layout.Style, layout.HeightEm, "fold", $"{document.Title}: responses folded over the report interval", Description(rows));
        var split = layout.PlotLeft + (FirstPanelShare * (layout.PlotRight - layout.PlotLeft - PanelGap));
        var press = Scale.Linear(0, 1, layout.PlotLeft, split);
        var response = Scale.Linear(-0.5, 0.5, split + PanelGap, layout.PlotRight);

        layout.DrawHeading(canvas);
        layout.DrawHeads(canvas);
        if (!layout.IsNarrow)
        {
            canvas.Text(layout.Right, layout.RowsTop - 0.5, "report interval, frame", "soft", Anchor.End, 0.9);
        }

        AxisDrawing.Draw(canvas, press, layout.IsNarrow ? [0, 0.5, 1] : [0, 0.25, 0.5, 0.75, 1], 2, layout.RowsTop, layout.RowsBottom, layout.IsNarrow ? "press after a slot" : "press after a slot, in report intervals", split - layout.PlotLeft);
        AxisDrawing.Draw(canvas, response, [-0.25, 0, 0.25], 2, layout.RowsTop, layout.RowsBottom, layout.IsNarrow ? "about a frame" : "response about its frame or slot", layout.PlotRight - split - PanelGap);
        for (var index = 0; index < rows.Count; index++)
        {
            var top = layout.RowsTop + (index * layout.Pitch);
            if (index > 0)
            {
                canvas.Line(layout.IsNarrow ? layout.LabelLeft : RowLayout.Margin, top, layout.Right, top, "rule", 0.06);
            }

            RowLabels.Draw(canvas, rows[index], layout, top, top + (layout.Pitch / 2), Interval(rows[index]), Frame(rows[index]));
            var bottom = top + layout.Pitch - 0.4;
            FoldMarks.Draw(canvas, rows[index], press, response, layout.IsNarrow ? bottom - 2.4 : top + 0.4, bottom);
        }

        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    internal static string Description(IReadOnlyList<RankedRow> rows)
    {
        var lines = rows.Select(row =>
        {
            var found = row.Condition.ReportInterval!;
            var means = found.Fold!.LatencyByPhase.Where(bin => bin.Trials > 0).Select(bin => bin.MeanLatencyMs).ToList();
            return $"{row.Condition.Id}: report interval {EstimateWording.Claim(found.Interval!, Quantity.ReportInterval)}; mean latency from {Numbers.Fixed(means.Max(), 2)} to {Numbers.Fixed(means.Min(), 2)} ms by when the press came.";
        });
        return $"Latencies over when in the report interval the press came. {string.Join(' ', lines)}";
    }

    private static List<string> Notes(IReadOnlyList<RankedRow> rows, int hidden)
    {
        var notes = new List<string>
        {
            FigureNotes.Basis(rows),
            "Left: dots are some of the trials, the line is the mean of all. A press just after a slot waits longest, so latency falls towards the next slot.",
            "Right: how many responses arrived when, about the frame that showed them or, where there is no grid of frames, about the slot.",
            "Each panel of a row to its own height.",
        };
        if (hidden > 0)
        {
            notes.Add($"Not drawn, with no report interval claimed: {Numbers.Count(hidden, "condition")}.");
        }

        return notes;
    }

    private static string Interval(RankedRow row)
    {
        var interval = row.Condition.ReportInterval!.Interval!;
        return $"{EstimateWording.Value(interval, Quantity.ReportInterval)}{Numbers.NoBreakSpace}ms";
    }

    private static string Frame(RankedRow row) => row.Condition.ReportInterval!.FrameInterval is { } frame
        ? $"frame {Numbers.Milliseconds(frame.Milliseconds)}"
        : "no frames";
}
