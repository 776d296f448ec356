using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Shapes;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>How latencies are distributed: above their density, below it the share of presses answered by then with a band for the whole curve. Of one condition, or of a few over each other.</summary>
public static class DistributionFigure
{
    private const double SmallSize = 0.9;
    private const double SampleWidth = 2.2;
    private const double KeyHeight = 1.5;

    private static readonly (double Least, double Greatest, double Narrow) Pitches = (25, 34, 25);

    /// <summary>Whether there is a density or a distribution function to draw.</summary>
    public static bool IsWorthDrawing(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return document.Conditions.Any(condition => condition.Density is not null || condition.Distribution is not null);
    }

    /// <summary>The figure of the document's conditions, in their order, as SVG text; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);

    internal static XElement Build(FindingsDocument document, FigureStyle style)
    {
        IReadOnlyList<RankedRow> rows = [.. document.Conditions.Select(condition => new RankedRow(condition, null))];
        var isOne = rows.Count == 1;
        var fit = isOne ? DistributionPanels.Fits(rows).FirstOrDefault() : null;
        var keys = isOne ? (fit is null ? 0 : 1) : rows.Count;
        var layout = new RowLayout(style, [], 0, Pitches, 0, 0, keys * KeyHeight, $"Latencies of {Listing.And([.. rows.Select(row => row.Condition.Id)])}", Notes(rows));
        var canvas = new Canvas(layout.Style, layout.HeightEm, "distribution", $"{document.Title}: distribution of latencies", Description(rows));
        var panels = new DistributionPanels(layout, rows);

        layout.DrawHeading(canvas);
        DrawShares(canvas, panels, layout);
        DrawAxes(canvas, panels, layout);
        for (var index = rows.Count - 1; index >= 0; index--)
        {
            DistributionMarks.Draw(canvas, panels, rows[index], index == 0);
        }

        if (fit is not null)
        {
            DistributionMarks.Fit(canvas, panels, fit);
            DrawKey(canvas, layout.LegendTop, "axis", dashed: true, $"fitted: {ShapeWording.Shape(rows[0].Condition.Shape)}");
        }

        if (isOne)
        {
            DistributionMarks.Quantiles(canvas, panels, rows[0].Condition);
        }

        for (var index = 0; !isOne && index < rows.Count; index++)
        {
            DrawKey(canvas, layout.LegendTop + (index * KeyHeight), DistributionMarks.Line(rows[index].Condition), index > 0, rows[index].Condition.Id);
        }

        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    internal static string Description(IReadOnlyList<RankedRow> rows)
    {
        var lines = rows.Select(row =>
            $"{row.Condition.Id}: mean {EstimateWording.ClaimOrLack(row.Condition.Mean, Quantity.Latency)}, median {EstimateWording.ClaimOrLack(row.Condition.Median, Quantity.Latency)}, 95{Numbers.NoBreakSpace}% answered by {EstimateWording.ClaimOrLack(row.Condition.P95, Quantity.Latency)}.");
        return $"Density and distribution function of latencies. {string.Join(' ', lines)}";
    }

    private static void DrawKey(Canvas canvas, double top, string line, bool dashed, string text)
    {
        var y = top + (KeyHeight / 2);
        canvas.Line(RowLayout.Margin, y, RowLayout.Margin + SampleWidth, y, line, 0.14, dashed);
        canvas.Text(RowLayout.Margin + SampleWidth + 0.6, y + 0.32, text, "soft", size: SmallSize, room: canvas.WidthEm - SampleWidth - 3);
    }

    private static void DrawShares(Canvas canvas, DistributionPanels panels, RowLayout layout)
    {
        canvas.Line(panels.Left, panels.UpperBase, panels.Right, panels.UpperBase, "axis", 0.07);
        foreach (var share in new[] { 0, 0.25, 0.5, 0.75, 1 })
        {
            var y = panels.Share.At(share);
            canvas.Line(panels.Left, y, panels.Right, y, "rule", 0.05);
            if (!layout.IsNarrow)
            {
                canvas.Text(panels.Left - 0.5, y + 0.25, $"{Numbers.Plain(100 * share)}{Numbers.NoBreakSpace}%", "soft", Anchor.End, SmallSize);
            }
        }

        if (!layout.IsNarrow)
        {
            canvas.Text(panels.Left - 0.5, panels.UpperBase - 0.3, "density", "soft", Anchor.End, SmallSize);
        }
    }

    private static void DrawAxes(Canvas canvas, DistributionPanels panels, RowLayout layout)
    {
        var (main, ticks) = (panels.Axis.Main, panels.Axis.Ticks);
        AxisDrawing.Draw(canvas, main, ticks.Values, ticks.Decimals, panels.Top, panels.Bottom, "latency, ms", main.At(main.High) - main.At(main.Low));
        if (panels.Axis.Tail is { } tail)
        {
            var decades = LogarithmicTicks.Inside(tail.Low * 1.12, tail.High, layout.IsNarrow ? 2 : 4);
            AxisDrawing.Draw(canvas, tail, decades, decades.All(double.IsInteger) ? 0 : 1, panels.Top, panels.Bottom, layout.IsNarrow ? "beyond, log" : "beyond, ms, logarithmic", 12);
        }
    }

    private static List<string> Notes(IReadOnlyList<RankedRow> rows)
    {
        var notes = new List<string> { $"{FigureNotes.Basis(rows)} Above: density; the dot with its bar is the mean with its interval." };
        var curves = rows.Select(row => row.Condition.Distribution).OfType<Findings.Conditions.DistributionCurve>().ToList();
        if (curves.Count > 0)
        {
            var points = Listing.And([.. curves.Select(curve => Numbers.Fixed(100 * curve.HalfHeight, 1)).Distinct()]);
            notes.Add($"Below: the share of presses answered by then, misses being later than any, with a {Numbers.Level(curves[0].Level)} band that holds the whole curve (Dvoretzky, Kiefer, Wolfowitz; Massart), {points} points to either side: for independent trials of these sessions; what other sittings would change is not in it.");
        }

        if (rows is [{ Condition.Shape: ShapeFinding }])
        {
            notes.Add("The fitted shape has all sessions at their common place.");
        }

        if (rows.Count == 1)
        {
            notes.Add("Dots on the curve: p5, p25, p50, p75 and p95 with their intervals, sittings in them.");
        }

        return notes;
    }
}
