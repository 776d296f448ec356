using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Findings.Quality;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The run chart: latencies in the order of trials, a row a condition, a column a sitting, so that a change within a session or between sittings is seen.</summary>
public static class RunChartFigure
{
    private static readonly (double Least, double Greatest, double Narrow) Pitches = (3.1, 5, 5.8);

    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);

    /// <summary>Whether a study has a session to draw.</summary>
    public static bool IsWorthDrawing(FindingsDocument document) => document.Conditions.Any(condition => condition.Sessions.Any(session => session.RunChart is not null));

    internal static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var rows = RankedRow.Of(document);
        var layout = new RowLayout(style, rows, Pitches, 0, RowLabels.RightColumn(rows, Range, Changes), 0, $"Run chart: {document.Title}", Notes(rows));
        var columns = RunChartColumns.Of(rows, layout.PlotLeft, layout.PlotRight);
        var canvas = new Canvas(layout.Style, layout.HeightEm, "run-chart", $"{document.Title}: latencies in the order of trials", Description(rows));

        layout.DrawHeading(canvas);
        layout.DrawHeads(canvas);
        if (!layout.IsNarrow)
        {
            canvas.Text(layout.Right, layout.RowsTop - 0.5, "height of the row", "soft", Anchor.End, 0.9);
        }

        columns.Draw(canvas, layout.RowsTop, layout.RowsBottom);
        for (var index = 0; index < rows.Count; index++)
        {
            var top = layout.RowsTop + (index * layout.Pitch);
            if (index > 0)
            {
                canvas.Line(layout.IsNarrow ? layout.LabelLeft : RowLayout.Margin, top, layout.Right, top, "rule", 0.06);
            }

            RowLabels.Draw(canvas, rows[index], layout, top, top + (layout.Pitch / 2), Range(rows[index]), Changes(rows[index]));
            var bottom = top + layout.Pitch - 0.4;
            RunChartMarks.Draw(canvas, rows[index], columns, layout.IsNarrow ? bottom - 2.2 : top + 0.4, bottom);
        }

        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    internal static string Description(IReadOnlyList<RankedRow> rows)
    {
        var lines = rows.Select(row =>
        {
            var sessions = row.Condition.Sessions.Where(session => session.RunChart is not null).Select(session =>
            {
                var batches = session.RunChart!.Batches;
                return $"{session.Key.Sitting} median {Numbers.Fixed(batches[0].MedianMs, 2)} ms at first and {Numbers.Fixed(batches[^1].MedianMs, 2)} ms at last";
            }).ToList();
            var changes = row.Condition.Cautions.Where(IsChange).Select(CautionWording.Sentence);
            return sessions.Count == 0
                ? $"{row.Condition.Id}: too few trials."
                : $"{row.Condition.Id}: {string.Join("; ", sessions)}. {string.Join(' ', changes)}".TrimEnd();
        });
        return $"Latencies in the order of trials, soonest mean first. {string.Join(' ', lines)}";
    }

    /// <summary>Whether a caution speaks of a change within a session.</summary>
    internal static bool IsChange(Caution caution) => caution.Kind is CautionKind.Drift or CautionKind.ChangePoint;

    private static List<string> Notes(IReadOnlyList<RankedRow> rows)
    {
        var charts = rows.SelectMany(row => row.Condition.Sessions).Select(session => session.RunChart).OfType<RunChart>().ToList();
        var notes = new List<string>
        {
            $"{FigureNotes.Basis(rows)} Columns are sittings, trials from left to right in each, in batches.",
            "Line: median of a batch. Band: 5 % to 95 % of its trials, no interval.".Replace(" %", $"{Numbers.NoBreakSpace}%", StringComparison.Ordinal),
        };
        if (charts.Any(chart => chart.LateCount > 0))
        {
            notes.Add("Dots at a row's upper edge: late responses.");
        }

        if (rows.Any(row => row.Condition.Cautions.Any(caution => caution.Kind == CautionKind.ChangePoint)))
        {
            notes.Add("Dashed upright: where latency changed.");
        }

        if (rows.Any(row => row.Condition.Sessions.Any(session => session.RunChart is not null && !session.InPool)))
        {
            notes.Add("Dashed line: a session kept out of the pooled variance; the cautions of the report say why.");
        }

        return notes;
    }

    private static string Range(RankedRow row) => RunChartMarks.Range(row) is { } range
        ? $"{Numbers.Fixed(range.Low, 1)}{Numbers.NoBreakSpace}to{Numbers.NoBreakSpace}{Numbers.Fixed(range.High, 1)}{Numbers.NoBreakSpace}ms"
        : "too few trials";

    private static string Changes(RankedRow row)
    {
        var changed = row.Condition.Cautions.Where(IsChange).Select(caution => caution.Subject.Split('.')[0]).Distinct().ToList();
        return changed.Count switch
        {
            0 => "no change told",
            1 or 2 => $"changed: {Listing.And(changed)}",
            _ => $"changed: {Numbers.Count(changed.Count, "session")}",
        };
    }
}
