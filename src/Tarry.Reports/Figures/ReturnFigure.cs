using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>Where each stick comes to rest after release: each release, and the mean of each direction, with a tail towards the side from which it came.</summary>
internal static class ReturnFigure
{
    private const double Tail = 0.8;
    private const double MeanTail = 1.8;

    /// <summary>Whether a stick was let go.</summary>
    public static bool IsWorthDrawing(FindingsDocument document) => Of(document).Count > 0;

    /// <summary>The figure.</summary>
    public static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var findings = Of(document);
        return SquarePanels.Draw(
            style,
            new("stick-return", $"Where each stick comes to rest: {document.Title}", $"{document.Title}: where each stick comes to rest after release", Description(findings), Notes),
            findings,
            Caption,
            DrawPanel);
    }

    private static IReadOnlyList<string> Notes { get; } =
    [
        "About the middle of the range, in per cent of half of it; each panel has its own scale. Blue square: where a release came to rest, equal ones upon each other; its tail points to the side from which the stick came. Orange dot with a long tail: the mean of a direction.",
        $"A stick that friction stops short has them on the side of their tails. Grey cross: the centre with its 95{Numbers.NoBreakSpace}% intervals. Square about the middle, where it is large enough to draw: one step of the axes.",
    ];

    private static List<StickFinding> Of(FindingsDocument document) => [.. (document.Sticks?.Conditions ?? []).Where(finding => finding.Returns.Count > 0)];

    private static void DrawPanel(Canvas canvas, SquarePanels panels, double left, double top, StickFinding finding)
    {
        var ends = finding.Returns.SelectMany(direction => direction.Rests).SelectMany(rest => new[] { rest.X, rest.Y });
        var plane = new PositionPlane(canvas, left, top, panels.Side, finding, ends);
        plane.DrawCentre(finding);
        (double, double, double, double) Towards(double x, double y, double degrees, double tail)
        {
            var (sine, cosine) = Math.SinCos(degrees * Math.PI / 180);
            var (atX, atY) = plane.At(x, y);
            return (atX, atY, atX + (tail * cosine), atY - (tail * sine));
        }

        var releases = finding.Returns.SelectMany(direction => direction.Rests.Distinct().Select(rest => (rest.X, rest.Y, direction.Degrees))).ToList();
        canvas.Lines(releases.Select(release => Towards(release.X, release.Y, release.Degrees, Tail)), "mark", 0.07);
        canvas.Squares(releases.Select(release => plane.At(release.X, release.Y)), 0.34, "mark-solid");
        canvas.Lines(finding.Returns.Select(direction => Towards(direction.X, direction.Y, direction.Degrees, MeanTail)), "reference-line", 0.14);
        foreach (var (x, y) in finding.Returns.Select(direction => plane.At(direction.X, direction.Y)))
        {
            canvas.Dot(x, y, 0.32, "reference-solid");
        }
    }

    private static PanelCaption Caption(StickFinding finding) => new(
        finding.Id,
        [StickWording.Claim(finding, StickMeasure.ReturnLag), StickWording.Claim(finding, StickMeasure.ReturnScatter), Basis(finding)],
        StickFaultWording.Verdict(finding, null, StickMeasure.ReturnLag));

    private static string Basis(StickFinding finding) =>
        $"{Numbers.Count(finding.Returns.Max(direction => direction.Sessions), "session")}, {Numbers.Count(finding.Returns.Sum(direction => direction.Releases), "release")}; {StickWording.Step(finding)}";

    private static string Description(List<StickFinding> findings) =>
        $"Where each stick comes to rest after release. {string.Join(' ', findings.Select(finding => $"{finding.Id}: {StickWording.Claim(finding, StickMeasure.ReturnLag)}; {StickWording.Claim(finding, StickMeasure.ReturnScatter)}; {Basis(finding)}; {Caption(finding).Verdict!.Text}."))}";
}
