using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Rest;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>Where each stick rests: the cloud of its positions with an ellipse a session, about the middle of the range.</summary>
internal static class RestCloudFigure
{
    private const int ArcPoints = 72;

    // An ellipse that is drawn smaller than this is a dot.
    private const double LeastEllipse = 0.25;

    /// <summary>Whether a stick was recorded at rest.</summary>
    public static bool IsWorthDrawing(FindingsDocument document) => Of(document).Count > 0;

    /// <summary>The figure.</summary>
    public static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var findings = Of(document);
        return SquarePanels.Draw(
            style,
            new("stick-rest", $"Where each stick rests: {document.Title}", $"{document.Title}: where each stick rests", Description(findings), Notes),
            findings,
            Caption,
            DrawPanel);
    }

    private static IReadOnlyList<string> Notes { get; } =
    [
        $"About the middle of the range, where a faultless stick rests, in per cent of half of it; each panel has its own scale. Small squares: positions at rest. Blue ring: what holds 95{Numbers.NoBreakSpace}% of a session's, were they normal; a dot where that is too small to draw. Grey cross: the centre with its 95{Numbers.NoBreakSpace}% intervals.",
        "Square about the middle, where it is large enough to draw: one step of the axes; rest inside it or on its edge is as central as such steps can say.",
    ];

    private static List<StickFinding> Of(FindingsDocument document) => [.. (document.Sticks?.Conditions ?? []).Where(finding => finding.Clouds.Count > 0)];

    private static void DrawPanel(Canvas canvas, SquarePanels panels, double left, double top, StickFinding finding)
    {
        var ends = finding.Clouds.SelectMany(cloud => new[] { Math.Abs(cloud.Ellipse.X) + cloud.Ellipse.SemiMajor, Math.Abs(cloud.Ellipse.Y) + cloud.Ellipse.SemiMajor });
        var plane = new PositionPlane(canvas, left, top, panels.Side, finding, ends);
        plane.DrawCentre(finding);
        foreach (var cloud in finding.Clouds)
        {
            canvas.Squares(cloud.Points.Where(point => plane.Holds(point.X, point.Y)).Select(point => plane.At(point.X, point.Y)), 0.16, "pale");
        }

        foreach (var cloud in finding.Clouds)
        {
            var (x, y) = plane.At(cloud.Ellipse.X, cloud.Ellipse.Y);
            if (plane.At(cloud.Ellipse.X + cloud.Ellipse.SemiMajor, 0).X - x < LeastEllipse)
            {
                canvas.Dot(x, y, LeastEllipse, "mark-solid");
            }
            else
            {
                canvas.Trace(Ellipse(cloud).Select(point => plane.At(point.X, point.Y)), "mark", width: 0.12);
            }
        }
    }

    private static IEnumerable<(double X, double Y)> Ellipse(RestCloud cloud)
    {
        var (sine, cosine) = Math.SinCos(cloud.Ellipse.Angle);
        return Enumerable.Range(0, ArcPoints + 1).Select(point =>
        {
            var (b, a) = Math.SinCos(2 * Math.PI * point / ArcPoints);
            var (major, minor) = (a * cloud.Ellipse.SemiMajor, b * cloud.Ellipse.SemiMinor);
            return (cloud.Ellipse.X + (major * cosine) - (minor * sine), cloud.Ellipse.Y + (major * sine) + (minor * cosine));
        });
    }

    private static PanelCaption Caption(StickFinding finding) => new(
        finding.Id,
        [StickWording.Claim(finding, StickMeasure.CentreOffset), Basis(finding)],
        StickFaultWording.Verdict(finding, null, StickMeasure.CentreOffset, StickMeasure.CentreDrift));

    private static string Basis(StickFinding finding) =>
        $"{Numbers.Count(finding.Clouds.Count, "session")}, {Numbers.Count(finding.Clouds.Sum(cloud => (long)cloud.Positions), "position")}; {StickWording.Step(finding)}";

    private static string Description(List<StickFinding> findings) =>
        $"Where each stick rests. {string.Join(' ', findings.Select(finding => $"{finding.Id}: {StickWording.Claim(finding, StickMeasure.CentreOffset)}; {Basis(finding)}; {Caption(finding).Verdict!.Text}."))}";
}
