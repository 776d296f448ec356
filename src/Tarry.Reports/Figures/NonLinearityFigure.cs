using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Ramps;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>Non-linearity: a row an axis, in it how far what it says departs from its best straight line, over what it says.</summary>
public static class NonLinearityFigure
{
    private static readonly (double Least, double Greatest, double Narrow) Pitches = (4, 6, 6.8);

    /// <summary>Whether a stick was swept.</summary>
    public static bool IsWorthDrawing(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return Of(document).Count > 0;
    }

    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(style);
        return Build(document, style).ToString(SaveOptions.DisableFormatting);
    }

    internal static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var rows = Of(document);
        var ticks = Ticks.Cover(-100, 100, style.IsNarrow ? 4 : 8);
        var rightColumn = rows.Max(row => Math.Max(TextFit.Width(row.Value), 0.9 * TextFit.Width(row.Bounds)));
        var layout = new RowLayout(style, [.. rows.Select(row => row.Name)], 0, Pitches, 0, rightColumn, 0, $"How straight each axis is: {document.Title}", Notes(rows));
        var canvas = new Canvas(layout.Style, layout.HeightEm, "stick-linearity", $"{document.Title}: how straight each axis is", Description(rows));
        var scale = Scale.Linear(-100, 100, layout.PlotLeft, layout.PlotRight);
        layout.DrawHeading(canvas);
        AxisDrawing.Draw(canvas, scale, [.. ticks.Values.Where(scale.Holds)], ticks.Decimals, layout.RowsTop, layout.RowsBottom, "what the axis says, % of half the range", layout.PlotRight - layout.PlotLeft);
        for (var index = 0; index < rows.Count; index++)
        {
            Draw(canvas, layout, scale, rows[index], layout.RowsTop + (index * layout.Pitch));
        }

        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    private static List<Row> Of(FindingsDocument document) =>
    [
        .. (document.Sticks?.Conditions ?? []).SelectMany(finding => finding.NonLinearity.Select(curve =>
        {
            var estimate = finding.Estimate(StickMeasure.NonLinearityBestFit, curve.Part);
            return new Row(
                $"{finding.Id}, {StickWording.Part(curve.Part)}",
                curve,
                estimate is null ? "not told" : $"{StickWording.Value(estimate)}{Numbers.NoBreakSpace}%",
                estimate is null ? "" : StickWording.Bounds(estimate));
        })),
    ];

    private static void Draw(Canvas canvas, RowLayout layout, Scale scale, Row row, double top)
    {
        var room = layout.IsNarrow ? 2.8 : 0.4;
        var (from, to) = (top + room, top + layout.Pitch - 0.5);
        var curve = row.Curve;
        var largest = curve.Departures.Zip(curve.HalfWidths, (departure, half) => Math.Abs(departure) + half).Max();
        var end = Ticks.Cover(0, Math.Max(largest, 1e-3), 1).High;
        var up = Scale.Linear(-end, end, to, from);
        canvas.Box(layout.PlotLeft, from, layout.PlotRight - layout.PlotLeft, to - from, "band");
        IEnumerable<(double, double)> Line(int side) => curve.Positions.Select((position, index) => (scale.At(position), up.At(curve.Departures[index] + (side * curve.HalfWidths[index]))));
        canvas.Trace(Line(1).Concat(Line(-1).Reverse()), "pale", closed: true);
        canvas.Line(layout.PlotLeft, up.At(0), layout.PlotRight, up.At(0), "axis", 0.06);
        canvas.Trace(Line(0), "mark", width: 0.14);
        canvas.Text(layout.PlotRight - 0.3, from + 0.9, $"±{Numbers.Plain(end)}{Numbers.NoBreakSpace}%", "soft", Anchor.End, 0.8);
        if (layout.IsNarrow)
        {
            canvas.Text(layout.LabelLeft, top + 1.2, row.Name, "strong", room: layout.LabelRoom);
            canvas.Text(layout.LabelLeft, top + 2.3, $"greatest {row.Value}{(row.Bounds.Length > 0 ? $" ({row.Bounds})" : "")}", "soft", size: 0.85, room: layout.LabelRoom);
            return;
        }

        var middle = (from + to) / 2;
        canvas.Text(layout.LabelLeft, middle + 0.35, row.Name, "strong", room: layout.LabelRoom);
        canvas.Text(layout.Right, middle - 0.1, row.Value, anchor: Anchor.End);
        canvas.Text(layout.Right, middle + 1, row.Bounds, "soft", Anchor.End, 0.9);
    }

    private static List<string> Notes(List<Row> rows)
    {
        var notes = new List<string>
        {
            $"Blue: departure from the straight line of least squares, high where the axis says too much; each row has its own scale. Pale: 95{Numbers.NoBreakSpace}% interval of each point over the sweeps of the first session that shows it ({Listing.And([.. rows.Select(row => Numbers.Whole(row.Curve.Passes)).Distinct()])} replicates). Right: the greatest departure over all sessions, with its interval.",
        };
        if (rows.Any(row => row.Curve.SteadyMotionAssumed))
        {
            notes.Add($"The motion was taken as steady, for want of known levels: {Listing.And([.. rows.Where(row => row.Curve.SteadyMotionAssumed).Select(row => row.Name)])}.");
        }

        return notes;
    }

    private static string Description(List<Row> rows) =>
        $"How straight each axis is. {string.Join(' ', rows.Select(row => $"{row.Name}: greatest departure {row.Value}{(row.Bounds.Length > 0 ? $", {row.Bounds}" : "")}."))}";

    private sealed record Row(string Name, NonLinearityCurve Curve, string Value, string Bounds);
}
