using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Play;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The play curve: a row a condition, in it how often a press hits over the timing window, a line a player, with the reference's lines behind.</summary>
public static class PlayCurveFigure
{
    private const double NarrowCurve = 2.9;

    private static readonly (double Least, double Greatest, double Narrow) Pitches = (3.4, 5.4, 6.4);

    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);

    internal static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var rows = RankedRow.Of(document);
        var play = document.Play;
        var byId = play?.Conditions.ToDictionary(condition => condition.Id) ?? [];
        string First(RankedRow row) => byId.TryGetValue(row.Condition.Id, out var finding) ? PlayWording.Brief(finding.Windows[^play!.Settings.WindowsMs.Count]) : "no response";
        string Second(RankedRow row) => byId.TryGetValue(row.Condition.Id, out var finding) && play!.Settings.PlayerSdsMs.Count > 1 ? PlayWording.Brief(finding.Windows[0]) : "";
        var layout = new RowLayout(style, rows, Pitches, 0, RowLabels.RightColumn(rows, First, Second), 0, $"In play: {document.Title}", Notes(document, rows));
        var canvas = new Canvas(layout.Style, layout.HeightEm, "play", $"{document.Title}: how often a press hits", Description(document, rows));
        layout.DrawHeading(canvas);
        layout.DrawHeads(canvas);
        if (play is null)
        {
            layout.DrawNotes(canvas);
            return canvas.Root;
        }

        var widest = play.Conditions.Max(condition => condition.Curves.Max(curve => curve.StepMs * curve.HitProbabilities.Count));
        var ticks = Ticks.Cover(0, widest, style.IsNarrow ? 5 : 10);
        var scale = Scale.Linear(0, widest, layout.PlotLeft, layout.PlotRight);
        AxisDrawing.Draw(canvas, scale, [.. ticks.Values.Where(scale.Holds)], ticks.Decimals, layout.RowsTop, layout.RowsBottom, "timing window to either side, ms", layout.PlotRight - layout.PlotLeft);
        if (!layout.IsNarrow)
        {
            canvas.Text(layout.Right, layout.RowsTop - 0.5, $"hits within {PlayWording.Window(play.Settings.WindowsMs[0])}\u00A0ms, %", "soft", Anchor.End, 0.9);
        }

        var reference = document.Reference is { } id ? byId.GetValueOrDefault(id) : null;
        for (var index = 0; index < rows.Count; index++)
        {
            var top = layout.RowsTop + (index * layout.Pitch);
            RowLabels.Draw(canvas, rows[index], layout, top, top + (layout.Pitch / 2), First(rows[index]), Second(rows[index]));
            DrawRow(canvas, scale, rows[index], byId.GetValueOrDefault(rows[index].Condition.Id), reference, play.Settings, layout, top + layout.Pitch - 0.45);
        }

        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    internal static string Description(FindingsDocument document, IReadOnlyList<RankedRow> rows)
    {
        var byId = document.Play?.Conditions.ToDictionary(condition => condition.Id) ?? [];
        var lines = rows.Where(row => byId.ContainsKey(row.Condition.Id)).Select(row =>
            $"{row.Condition.Id}: {string.Join("; ", byId[row.Condition.Id].Windows.Select(window => $"{PlayWording.Player(window.PlayerSdMs)}, within {PlayWording.Window(window.WindowMs)}{Numbers.NoBreakSpace}ms: {EstimateWording.ClaimOrLack(window.HitProbability, Quantity.Share)}"))}.");
        return $"How often a press hits a timing window with the constant compensation that hits most often. {string.Join(' ', lines)}";
    }

    private static List<string> Notes(FindingsDocument document, IReadOnlyList<RankedRow> rows)
    {
        var notes = new List<string> { FigureNotes.Basis(rows) };
        if (document.Play is not { } play)
        {
            return notes;
        }

        notes.Add("Each row runs from 0 % at its foot to 100 % at its top. Every press is made early by the constant that hits most often in that window; a press without a response does not hit.");
        var players = play.Settings.PlayerSdsMs;
        notes.Add(players.Count == 1
            ? $"For {PlayWording.Player(players[0])}."
            : $"Solid: {PlayWording.Player(players[^1])}. Dashed: {Listing.And([.. players.SkipLast(1).Select(PlayWording.Player)])}.");
        if (document.Reference is { } reference && play.Conditions.Any(condition => condition.Id == reference))
        {
            notes.Add($"Behind, in orange: the reference {reference}.");
        }

        notes.Add("Rows and ranks are by mean latency, as in the standing. Intervals at 95 %; the lines are as the trials have it and flatter a little.");
        return notes;
    }

    private static void DrawRow(Canvas canvas, Scale scale, RankedRow row, PlayFinding? finding, PlayFinding? reference, PlaySettings settings, RowLayout layout, double bottom)
    {
        var height = layout.IsNarrow ? NarrowCurve : layout.Pitch - 0.8;
        foreach (var share in new[] { 0, 0.5, 1 })
        {
            canvas.Line(layout.PlotLeft, bottom - (share * height), layout.PlotRight, bottom - (share * height), "rule", share == 0.5 ? 0.03 : 0.06, dashed: share == 0.5);
        }

        if (reference is not null && reference != finding)
        {
            DrawCurves(canvas, scale, reference, settings, bottom, height, "reference-line", 0.08);
        }

        if (finding is null)
        {
            canvas.Text(layout.PlotLeft + 0.4, bottom - 0.3, "no response", "soft", size: 0.9);
            return;
        }

        DrawCurves(canvas, scale, finding, settings, bottom, height, row.Condition.IsReference ? "reference-line" : "mark", 0.14);
    }

    private static void DrawCurves(Canvas canvas, Scale scale, PlayFinding finding, PlaySettings settings, double bottom, double height, string line, double width)
    {
        foreach (var curve in finding.Curves)
        {
            var points = curve.HitProbabilities.Select((share, index) => (scale.At(curve.StepMs * (index + 1)), bottom - (share * height)));
            canvas.Trace(points, line, width: width, dashed: curve.PlayerSdMs < settings.PlayerSdsMs[^1]);
        }
    }
}
