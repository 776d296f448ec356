using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Rim;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The rose: how far the mean turn of each stick departs from its circle, over angle, the departure drawn larger than life.</summary>
internal static class StickRoseFigure
{
    private const double CircleShare = 0.66;

    /// <summary>Whether a stick was turned along its gate.</summary>
    public static bool IsWorthDrawing(FindingsDocument document) => Of(document).Count > 0;

    /// <summary>The figure.</summary>
    public static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var findings = Of(document);
        return SquarePanels.Draw(
            style,
            new("stick-rose", $"The rose of each stick: {document.Title}", $"{document.Title}: how round each stick's turn is", Description(findings), Notes(findings)),
            findings,
            Caption,
            DrawPanel);
    }

    private static List<StickFinding> Of(FindingsDocument document) => [.. (document.Sticks?.Conditions ?? []).Where(finding => finding.Rose is not null)];

    // A round number of per cent that takes the largest departure to the edge.
    private static double Scale(StickRose rose)
    {
        var largest = rose.Distances.Max(distance => Math.Abs(distance - rose.Circle.Radius));
        return Ticks.Cover(0, Math.Max(largest, 0.1), 1).High;
    }

    private static void DrawPanel(Canvas canvas, SquarePanels panels, double left, double top, StickFinding finding)
    {
        var rose = finding.Rose!;
        var scale = Scale(rose);
        var (x, y) = (left + (panels.Side / 2), top + (panels.Side / 2));
        var radius = CircleShare * panels.Side / 2;
        double Distance(double departure) => radius + (Math.Clamp(departure / scale, -1.4, 1) * (1 - CircleShare) * panels.Side / 2);
        (double, double) At(double turn, double distance) => (x + (distance * Math.Cos(2 * Math.PI * turn)), y - (distance * Math.Sin(2 * Math.PI * turn)));
        IEnumerable<(double, double)> Line(IReadOnlyList<double> distances) =>
            Enumerable.Range(0, distances.Count + 1).Select(sector => At((sector + 0.5) / distances.Count, Distance(distances[sector % distances.Count] - rose.Circle.Radius)));

        canvas.Trace(Line(rose.High).Concat(Line(rose.Low).Reverse()), "pale", closed: true);
        foreach (var departure in new[] { -scale, scale })
        {
            canvas.Ring(x, y, Distance(departure), "rule", 0.06);
        }

        canvas.Line(x - (panels.Side / 2), y, x + (panels.Side / 2), y, "rule", 0.05);
        canvas.Line(x, top, x, top + panels.Side, "rule", 0.05);
        canvas.Ring(x, y, radius, "axis", 0.08, dashed: true);
        canvas.Trace(Line(rose.Distances), "mark", width: 0.17);
        canvas.Text(x + 0.3, y - Distance(scale) + 1, $"+{Numbers.Plain(scale)}{Numbers.NoBreakSpace}%", "soft", size: 0.8);
    }

    private static PanelCaption Caption(StickFinding finding) => new(
        finding.Id,
        [StickWording.Claim(finding, StickMeasure.RadialDeviation), $"{Numbers.Count(finding.Rose!.Sessions, "session")}, {Numbers.Count(finding.Rose.Turns, "turn")}"],
        StickFaultWording.Verdict(finding, null, StickMeasure.RadialDeviation, StickMeasure.GainDifference, StickMeasure.NonOrthogonality, StickMeasure.Squareness, StickMeasure.Hysteresis));

    private static List<string> Notes(List<StickFinding> findings)
    {
        var notes = new List<string>
        {
            $"Departure of the mean turn from the circle of least squares (dashed), drawn out of scale: the outer ring stands for the per cent of half the range written at it, in each panel its own. Pale: 95{Numbers.NoBreakSpace}% interval of each of 72 sectors.",
        };
        if (findings.Any(finding => finding.Estimate(StickMeasure.RadialDeviation) is null))
        {
            notes.Add("Where the deviation is not told, the report says why.");
        }

        return notes;
    }

    private static string Description(List<StickFinding> findings) =>
        $"The rose of each stick. {string.Join(' ', findings.Select(finding => $"{finding.Id}: {string.Join("; ", Caption(finding).Beneath)}; {Caption(finding).Verdict!.Text}."))}";
}
