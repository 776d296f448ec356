using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The report streams: a row each, how often which time lay between two reports, in report intervals as observed, with the declared interval marked.</summary>
public static class ReportStreamFigure
{
    private const double SmallSize = 0.9;
    private const double NarrowSize = 0.85;
    private const double MostSlots = 4;

    private static readonly (double Least, double Greatest, double Narrow) Pitches = (3.6, 5.5, 6.4);

    /// <summary>Whether the study has a stream whose interval is known.</summary>
    public static bool IsWorthDrawing(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return (document.ReportStreams ?? []).Any(stream => stream.Histogram is not null);
    }

    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);

    internal static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var rows = ReportStreamRow.Of(document.ReportStreams ?? []);
        var rightColumn = rows.Max(row => Math.Max(TextFit.Width(row.Observed), SmallSize * TextFit.Width(row.Slots)));
        var layout = new RowLayout(
            style, [.. rows.Select(row => row.Name)], 0, Pitches, SmallSize * rows.Max(row => TextFit.Width(row.Source)), rightColumn, 0, $"Report streams: {document.Title}", Notes(document, rows));
        var canvas = new Canvas(layout.Style, layout.HeightEm, "report-streams", $"{document.Title}: report streams", Description(rows));
        var scale = Scale.Linear(-0.05, MostSlots + 0.05, layout.PlotLeft, layout.PlotRight);

        layout.DrawHeading(canvas);
        if (!layout.IsNarrow)
        {
            canvas.Text(layout.LabelLeft, layout.RowsTop - 0.5, "session", "soft", size: SmallSize);
            canvas.Text(layout.Right, layout.RowsTop - 0.5, "report interval, ms", "soft", Anchor.End, SmallSize);
        }

        AxisDrawing.Draw(canvas, scale, [0, 1, 2, 3, 4], 0, layout.RowsTop, layout.RowsBottom, layout.IsNarrow ? "time between reports, in intervals" : "time between reports, in report intervals", layout.PlotRight - layout.PlotLeft);
        for (var index = 0; index < rows.Count; index++)
        {
            var top = layout.RowsTop + (index * layout.Pitch);
            if (index > 0)
            {
                canvas.Line(layout.LabelLeft, top, layout.Right, top, "rule", 0.06);
            }

            DrawLabels(canvas, rows[index], layout, top);
            var marksTop = layout.IsNarrow ? top + 3.3 : top + 0.4;
            ReportStreamMarks.Draw(canvas, rows[index], scale, marksTop, top + layout.Pitch - 0.25);
        }

        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    private static void DrawLabels(Canvas canvas, ReportStreamRow row, RowLayout layout, double top)
    {
        if (layout.IsNarrow)
        {
            canvas.Text(layout.LabelLeft, top + 1.2, row.Name, "strong", room: layout.Right - layout.LabelLeft);
            canvas.Text(layout.LabelLeft, top + 2.2, row.Observed, size: NarrowSize, room: layout.Right - layout.LabelLeft);
            canvas.Text(layout.LabelLeft, top + 3.1, row.Slots, "soft", size: NarrowSize, room: layout.Right - layout.LabelLeft);
            return;
        }

        var middle = top + (layout.Pitch / 2);
        canvas.Text(layout.LabelLeft, middle - 0.15, row.Name, "strong", room: layout.LabelRoom);
        canvas.Text(layout.LabelLeft, middle + 0.95, row.Source, "soft", size: SmallSize, room: layout.LabelRoom);
        canvas.Text(layout.Right, middle - 0.15, row.Observed, anchor: Anchor.End);
        canvas.Text(layout.Right, middle + 0.95, row.Slots, "soft", Anchor.End, SmallSize);
    }

    private static string Description(IReadOnlyList<ReportStreamRow> rows) =>
        $"How often which time lay between two reports. {string.Join(' ', rows.Select(row => $"{row.Name}, {row.Source}: {row.Observed}; {row.Slots}."))}";

    private static List<string> Notes(FindingsDocument document, IReadOnlyList<ReportStreamRow> rows)
    {
        var streams = document.ReportStreams ?? [];
        var notes = new List<string>
        {
            $"{Numbers.Count(rows.Count, "stream")}, {Numbers.Count(streams.Select(stream => stream.Session).Distinct().Count(), "session")}, {Numbers.Count(rows.Sum(row => row.Stream.Reports), "report")}. The axis is in intervals as observed; limits in brackets at 95{Numbers.NoBreakSpace}%, within the session. Heights go by the logarithm of the count, so that one slot missed is seen beside thousands filled.",
            "Solid: one interval apart. Open: nearer than half of one (doubled), or with slots left empty between, which a device that reports only changes leaves without fault.",
        };
        if (rows.Any(row => row.Declared is not null))
        {
            notes.Add("Dashed: the interval that the device declares.");
        }

        var beyond = rows.Sum(row => row.Stream.Histogram?.Above ?? 0);
        if (beyond > 0)
        {
            notes.Add($"Not drawn, further apart: {Numbers.Whole(beyond)}.");
        }

        if (streams.Count > rows.Count)
        {
            notes.Add($"Not drawn, without a report interval: {Numbers.Count(streams.Count - rows.Count, "stream")}.");
        }

        return notes;
    }
}
