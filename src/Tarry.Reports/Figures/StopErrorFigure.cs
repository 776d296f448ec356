using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Stops;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The error in direction at stops of known angle: a row a stick, in it the error of each stop with its interval, over the true angle.</summary>
internal static class StopErrorFigure
{
    private const double LeastReach = 0.1;

    // Room for the dot of a stop at 0 degrees.
    private const double Beside = 25;
    private const double BarCap = 0.3;

    /// <summary>Whether a stick was held against stops.</summary>
    public static bool IsWorthDrawing(FindingsDocument document) => Of(document).Count > 0;

    /// <summary>The figure.</summary>
    public static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var rows = Of(document);
        var end = Ticks.Cover(0, rows.SelectMany(row => row.Stops).Select(stop => Math.Abs(stop.Error) + (stop.HalfWidth ?? 0)).Append(LeastReach).Max(), 3).High;
        var figure = new StickRows(
            new("stick-stops", $"How true each direction is: {document.Title}", $"{document.Title}: how far directions err at known angles", Description(rows), Notes),
            (left, right) => Scale.Linear(-Beside, 360 + Beside, left, right),
            ([0, 45, 90, 135, 180, 225, 270, 315, 360], [0, 90, 180, 270, 360]),
            "true angle of the stop, ° from right");
        return figure.Draw(style, rows, (canvas, across, top, bottom, stops) => DrawRow(canvas, across, Scale.Linear(-end, end, bottom, top), stops));
    }

    private static IReadOnlyList<string> Notes { get; } =
    [
        $"Dots: the direction that the stick says less the true angle of the stop, in degrees, above zero where it is turned counter-clockwise; a true stick lies on the line. All rows have one scale. Bars: 95{Numbers.NoBreakSpace}% interval of each stop by itself, over sessions where there are several, else over visits, with the uncertainty of the stops in it; a stop visited once has none.",
        $"Number: the greatest error, with its 95{Numbers.NoBreakSpace}% interval. A departure is told where it exceeds what the uncertainty of the stops, the steps of the axes and chance in all tests of the study together explain."
    ];

    private static List<(StickRow Label, IReadOnlyList<StopError> Stops)> Of(FindingsDocument document) =>
        [.. (document.Sticks?.Conditions ?? []).Where(finding => finding.Stops.Count > 0).Select(finding => (Label(finding), finding.Stops))];

    private static StickRow Label(StickFinding finding)
    {
        var estimate = finding.Estimate(StickMeasure.AngularError);
        return new StickRow(
            finding.Id,
            estimate is null ? "not told" : $"{StickWording.Value(estimate)}°",
            estimate is null ? "" : StickWording.Bounds(estimate),
            StickFaultWording.Verdict(finding, null, StickMeasure.AngularError, StickMeasure.AngularRotation),
            Basis(finding.Stops));
    }

    private static string Basis(IReadOnlyList<StopError> stops) =>
        $"{Numbers.Count(stops.Max(stop => stop.Sessions), "session")}, {Numbers.Count(stops.Sum(stop => stop.Visits), "visit")}";

    private static void DrawRow(Canvas canvas, Scale across, Scale up, IReadOnlyList<StopError> stops)
    {
        StickRowScale.Draw(canvas, across, up, "°");
        var placed = stops.Select(stop => (X: across.At(((stop.Degrees % 360) + 360) % 360), Stop: stop)).ToList();
        canvas.Lines(placed.Where(one => one.Stop.HalfWidth is not null).SelectMany(one => Bar(one.X, up.At(one.Stop.Error - one.Stop.HalfWidth!.Value), up.At(one.Stop.Error + one.Stop.HalfWidth.Value))), "mark", 0.14);
        foreach (var (x, stop) in placed)
        {
            canvas.Dot(x, up.At(stop.Error), 0.24, stop.HalfWidth is null ? "mark-open" : "mark-solid");
        }
    }

    private static IEnumerable<(double, double, double, double)> Bar(double x, double low, double high) =>
        [(x, low, x, high), (x - BarCap, low, x + BarCap, low), (x - BarCap, high, x + BarCap, high)];

    private static string Description(List<(StickRow Label, IReadOnlyList<StopError> Stops)> rows) =>
        $"Errors in direction at stops of known angle. {string.Join(' ', rows.Select(row => row.Label.Sentence))}";
}
