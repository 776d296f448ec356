using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The ridge of densities: every condition's latencies on one axis, sorted by mean, with the late tail beyond a break.</summary>
public static class RidgeFigure
{
    private const double BasisSize = 0.85;

    private static readonly (double Least, double Greatest, double Narrow) Pitches = (2.9, 5, 4.6);

    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);

    internal static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var rows = RankedRow.Of(document);
        IReadOnlyList<DensityCurve> curves = [.. rows.Select(row => row.Condition.Density).OfType<DensityCurve>()];
        var steps = style.IsNarrow ? 4 : 8;
        var draft = RidgePanels.Of(curves, 0, 1, steps);
        var layout = new RowLayout(style, rows, Pitches, BasisWidth(rows), 0, 0, $"Where latencies fall: {document.Title}", Notes(rows, draft));
        var panels = RidgePanels.Of(curves, layout.PlotLeft, layout.PlotRight, steps);
        var canvas = new Canvas(layout.Style, layout.HeightEm, "ridge", $"{document.Title}: densities of latency", Description(rows, panels));

        layout.DrawHeading(canvas);
        AxisDrawing.Draw(canvas, panels.Main, panels.Ticks.Values, panels.Ticks.Decimals, layout.RowsTop, layout.RowsBottom, "latency, ms", layout.PlotRight - layout.PlotLeft);
        layout.DrawHeads(canvas);
        if (panels.Tail is { } tail)
        {
            var head = $"later than {Numbers.Milliseconds(tail.Low)}";
            canvas.Text(layout.Right, layout.RowsTop - 0.5, head, "soft", Anchor.End, 0.9);
            DrawBreak(canvas, panels.Main.At(panels.Main.High), layout.RowsBottom);
            DrawBreak(canvas, tail.At(tail.Low), layout.RowsBottom);
            var ticks = LogarithmicTicks.Inside(tail.Low * 1.12, tail.High, style.IsNarrow ? 2 : 4);
            AxisDrawing.Draw(canvas, tail, ticks, ticks.All(double.IsInteger) ? 0 : 1, layout.RowsTop, layout.RowsBottom, style.IsNarrow ? "beyond, log" : "beyond, ms, logarithmic", 12);
        }

        DrawRows(canvas, rows, layout, panels);
        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    internal static string Description(IReadOnlyList<RankedRow> rows, RidgePanels panels)
    {
        var lines = rows.Select(row =>
        {
            var late = row.Condition.Density is { } curve && panels.CutMs is { } cut
                ? $"; {Share(curve, cut)} later than {Numbers.Milliseconds(cut)}"
                : "";
            var density = row.Condition.Density is null ? "; too few trials for a density" : "";
            return $"{row.Condition.Id}: mean {EstimateWording.ClaimOrLack(row.Condition.Mean, Quantity.Latency)}{late}{density}.";
        });
        return $"Densities of latency on one axis, soonest mean first. {string.Join(' ', lines)}";
    }

    private static double BasisWidth(IReadOnlyList<RankedRow> rows) => rows.Select(row => BasisSize * TextFit.Width(row.Basis)).DefaultIfEmpty(0).Max();

    private static List<string> Notes(IReadOnlyList<RankedRow> rows, RidgePanels panels)
    {
        var notes = new List<string>
        {
            FigureNotes.Evidence(rows),
            "The dot with its bar is the mean with its interval; each density is drawn to its own height.",
        };
        if (panels.CutMs is { } cut)
        {
            notes.Add($"Right of the break: later than {Numbers.Milliseconds(cut)}, on a logarithmic axis, magnified alike for all; the number is the share of the density there.");
        }

        if (FigureNotes.Open(rows) is { } open)
        {
            notes.Add(open);
        }

        return notes;
    }

    private static string Share(DensityCurve curve, double cutMs)
    {
        var percent = SharedTail.ShareBeyond(curve, cutMs) * 100;
        return percent is > 0 and < 0.01 ? $"below 0.01{Numbers.NoBreakSpace}%" : $"{Numbers.Plain(Math.Round(percent, 2))}{Numbers.NoBreakSpace}%";
    }

    private static void DrawBreak(Canvas canvas, double x, double y) =>
        canvas.Line(x - 0.25, y + 0.45, x + 0.25, y - 0.45, "axis", 0.1);

    private static void DrawRows(Canvas canvas, IReadOnlyList<RankedRow> rows, RowLayout layout, RidgePanels panels)
    {
        var tallest = panels.CutMs is { } cut
            ? rows.Select(row => row.Condition.Density).OfType<DensityCurve>().Max(curve => RidgeCurve.TailPeak(curve, cut))
            : 0;
        for (var index = 0; index < rows.Count; index++)
        {
            var row = rows[index];
            var top = layout.RowsTop + (index * layout.Pitch);
            var baseline = top + layout.Pitch - 0.45;
            canvas.Line(layout.PlotLeft, baseline, panels.Main.At(panels.Main.High), baseline, "rule", 0.06);
            if (row.Condition.Density is { } curve)
            {
                RidgeCurve.DrawMain(canvas, curve, panels.Main, baseline, Height(layout), row);
                if (panels.Tail is { } tail && panels.CutMs is { } from)
                {
                    RidgeCurve.DrawTail(canvas, curve, tail, baseline, Height(layout), tallest, row, row.IsOpen);
                    canvas.Text(layout.Right, top + (layout.IsNarrow ? 2.3 : 1), Share(curve, from), "soft", Anchor.End, 0.85);
                }
            }
            else
            {
                canvas.Text(layout.PlotLeft + 0.4, baseline - 0.3, "too few trials for a density", "soft", size: 0.9);
            }

            DrawMean(canvas, row, panels.Main, baseline);
            DrawLabels(canvas, row, layout, top, baseline);
        }
    }

    // A curve keeps below the mean of the row above; labels above the marks need their own room.
    private static double Height(RowLayout layout) => layout.IsNarrow ? layout.Pitch - 2.3 : layout.Pitch * 0.78;

    private static void DrawMean(Canvas canvas, RankedRow row, Scale scale, double baseline)
    {
        if (row.Mean is not { } mean || !scale.Holds(mean.Value.Milliseconds))
        {
            return;
        }

        var line = row.Condition.IsReference ? "reference-line" : "mark";
        canvas.Line(scale.At(mean.Interval.Low.Milliseconds), baseline, scale.At(mean.Interval.High.Milliseconds), baseline, line, 0.2, row.IsOpen);
        var dot = (row.Condition.IsReference, row.IsOpen) switch
        {
            (true, true) => "reference-open",
            (true, false) => "reference-solid",
            (false, true) => "mark-open",
            _ => "mark-solid",
        };
        canvas.Dot(scale.At(mean.Value.Milliseconds), baseline, 0.26, dot);
    }

    private static void DrawLabels(Canvas canvas, RankedRow row, RowLayout layout, double top, double baseline)
    {
        var name = row.Condition.IsReference ? "strong reference" : "strong";
        if (layout.IsNarrow)
        {
            var basisRoom = (BasisSize * TextFit.Width(row.Basis)) + 0.6;
            canvas.Text(layout.LabelLeft, top + 1.1, row.Condition.Id, name, room: layout.LabelRoom - basisRoom);
            canvas.Text(layout.Right, top + 1.1, row.Basis, "soft", Anchor.End, BasisSize);
            return;
        }

        canvas.Text(RowLayout.Margin, baseline - 1.05, row.RankRange, "soft", size: 0.9);
        canvas.Text(layout.LabelLeft, baseline - 1.05, row.Condition.Id, name, room: layout.LabelRoom);
        canvas.Text(layout.LabelLeft, baseline + 0.05, row.Basis, "soft", size: BasisSize, room: layout.LabelRoom);
    }
}
