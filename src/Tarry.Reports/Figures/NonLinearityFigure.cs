using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Ramps;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>Non-linearity: a row an axis, in it how far what it says departs from its best straight line, over what it says.</summary>
internal static class NonLinearityFigure
{
    private const double LeastReach = 0.1;

    /// <summary>Whether a stick was swept.</summary>
    public static bool IsWorthDrawing(FindingsDocument document) => Of(document).Count > 0;

    /// <summary>The figure.</summary>
    public static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var rows = Of(document);
        var largest = rows.SelectMany(row => row.Curve.Departures.Zip(row.Curve.HalfWidths, (departure, half) => Math.Abs(departure) + half)).Append(LeastReach).Max();
        var end = Ticks.Cover(0, largest, 3).High;
        var figure = new StickRows(
            new("stick-linearity", $"How straight each axis is: {document.Title}", $"{document.Title}: how straight each axis is", $"How straight each axis is. {string.Join(' ', rows.Select(row => row.Label.Sentence))}", Notes(rows)),
            (left, right) => Scale.Linear(-100, 100, left, right),
            ([-100, -75, -50, -25, 0, 25, 50, 75, 100], [-100, -50, 0, 50, 100]),
            "what the axis says, % of half the range");
        return figure.Draw(style, rows, (canvas, across, top, bottom, curve) => DrawRow(canvas, across, Scale.Linear(-end, end, bottom, top), curve));
    }

    private static List<(StickRow Label, NonLinearityCurve Curve)> Of(FindingsDocument document) =>
        [.. (document.Sticks?.Conditions ?? []).SelectMany(finding => finding.NonLinearity.Select(curve => (Label(finding, curve.Part), curve)))];

    private static StickRow Label(StickFinding finding, StickPart part)
    {
        var estimate = finding.Estimate(StickMeasure.NonLinearityBestFit, part);
        return new StickRow(
            $"{finding.Id}, {StickWording.Part(part)}",
            estimate is null ? "not told" : $"{StickWording.Value(estimate)}{Numbers.NoBreakSpace}%",
            estimate is null ? "" : StickWording.Bounds(estimate),
            StickFaultWording.Verdict(finding, part, StickMeasure.NonLinearityBestFit),
            estimate is null ? "" : StickWording.Basis(estimate));
    }

    private static void DrawRow(Canvas canvas, Scale across, Scale up, NonLinearityCurve curve)
    {
        IEnumerable<(double, double)> Line(int side) => curve.Positions.Select((position, index) => (across.At(position), up.At(curve.Departures[index] + (side * curve.HalfWidths[index]))));
        canvas.Trace(Line(1).Concat(Line(-1).Reverse()), "pale", closed: true);
        StickRowScale.Draw(canvas, across, up, "%");
        canvas.Trace(Line(0), "mark", width: 0.14);
    }

    private static List<string> Notes(List<(StickRow Label, NonLinearityCurve Curve)> rows)
    {
        var notes = new List<string>
        {
            $"Blue: departure from the straight line of least squares in per cent of half the range, high where the axis says too much; a straight axis is a level line. All rows have one scale. Pale: 95{Numbers.NoBreakSpace}% interval of each point over the sweeps of the first session that shows it ({Listing.And([.. rows.Select(row => Numbers.Whole(row.Curve.Passes)).Distinct()])} replicates). Number: the greatest departure over all sessions, with its 95{Numbers.NoBreakSpace}% interval.",
        };
        if (rows.Any(row => row.Curve.SteadyMotionAssumed))
        {
            notes.Add($"The motion was taken as steady, for want of known levels: {Listing.And([.. rows.Where(row => row.Curve.SteadyMotionAssumed).Select(row => row.Label.Name)])}.");
        }

        return notes;
    }
}
