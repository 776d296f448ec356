using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The sessions: how far each session's mean lies from the mean of its condition, with its precision within the session.</summary>
public static class SessionsFigure
{
    private const double NarrowMarks = 1.7;

    private static readonly (double Least, double Greatest, double Narrow) Pitches = (2.9, 5, 4.9);

    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);

    internal static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var rows = RankedRow.Of(document);
        var ticks = SessionMarks.Cover(rows, style.IsNarrow ? 5 : 9);
        var layout = new RowLayout(style, rows, Pitches, 0, RowLabels.RightColumn(rows, Sessions, KeptOut), 0, $"Sessions: {document.Title}", Notes(rows));
        var canvas = new Canvas(layout.Style, layout.HeightEm, "sessions", $"{document.Title}: means of sessions", Description(rows));
        var scale = Scale.Linear(ticks.Low, ticks.High, layout.PlotLeft, layout.PlotRight);

        layout.DrawHeading(canvas);
        layout.DrawHeads(canvas);
        AxisDrawing.Draw(canvas, scale, ticks.Values, ticks.Decimals, layout.RowsTop, layout.RowsBottom, "session mean less condition mean, ms", layout.PlotRight - layout.PlotLeft);
        for (var index = 0; index < rows.Count; index++)
        {
            var top = layout.RowsTop + (index * layout.Pitch);
            if (index > 0)
            {
                canvas.Line(layout.IsNarrow ? layout.LabelLeft : RowLayout.Margin, top, layout.Right, top, "rule", 0.06);
            }

            RowLabels.Draw(canvas, rows[index], layout, top, top + (layout.Pitch / 2), Sessions(rows[index]), KeptOut(rows[index]));
            var bottom = top + layout.Pitch - 0.4;
            var marksTop = layout.IsNarrow ? bottom - NarrowMarks : top + 0.4;
            SessionMarks.Draw(canvas, scale, rows[index], marksTop, bottom);
            canvas.Line(scale.At(0), marksTop, scale.At(0), bottom, "axis", 0.06);
        }

        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    internal static string Description(IReadOnlyList<RankedRow> rows)
    {
        var lines = rows.Select(row =>
        {
            var sessions = SessionMarks.Shown(row).Select(session =>
                $"{session.Key.Sitting} {EstimateWording.Value((Estimate<Latency>)session.Mean, Quantity.Latency)}{Numbers.NoBreakSpace}ms ({EstimateWording.Evidence((Estimate<Latency>)session.Mean, Quantity.Latency)}{(session.InPool ? "" : "; kept out of the pool")})").ToList();
            return sessions.Count == 0 ? $"{row.Condition.Id}: no session mean." : $"{row.Condition.Id}: {string.Join("; ", sessions)}.";
        });
        return $"Means of sessions, soonest condition first. {string.Join(' ', lines)}";
    }

    private static List<string> Notes(IReadOnlyList<RankedRow> rows)
    {
        var notes = new List<string>
        {
            FigureNotes.Basis(rows),
            "A dot is a session, sittings in the order of their names from the top, with the interval that holds within that session.",
            "The pale band is the interval of the condition's mean, made from the scatter between sessions.",
        };
        if (rows.Any(row => SessionMarks.Shown(row).Any(session => !session.InPool)))
        {
            notes.Add("Open dots, dashed: kept out of the pooled variance; the cautions of the report say why.");
        }

        var hidden = rows.Sum(row => row.Condition.UsedSessions - (row.Mean is null ? 0 : SessionMarks.Shown(row).Count));
        if (hidden > 0)
        {
            notes.Add($"Not drawn, with too few trials for an interval: {Numbers.Count(hidden, "session")}.");
        }

        return notes;
    }

    private static string Sessions(RankedRow row) => Numbers.Count(row.Condition.UsedSessions, "session");

    private static string KeptOut(RankedRow row)
    {
        var sittings = SessionMarks.Shown(row).Where(session => !session.InPool).Select(session => session.Key.Sitting).ToList();
        return sittings.Count switch
        {
            0 => "all in the pool",
            1 or 2 => $"kept out: {Listing.And(sittings)}",
            _ => $"kept out: {Numbers.Count(sittings.Count, "session")}",
        };
    }
}
