using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Rest;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>Where each stick rests: the cloud of its positions with an ellipse a session, and where it came to rest after release from each direction.</summary>
public static class RestCloudFigure
{
    private const int ArcPoints = 72;

    /// <summary>Whether a stick was recorded at rest or let go.</summary>
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
        var findings = Of(document);
        var panels = new SquarePanels(style, findings.Count, $"Where each stick rests: {document.Title}", Notes(findings));
        var canvas = new Canvas(panels.Style, panels.HeightEm, "stick-rest", $"{document.Title}: where each stick rests", Description(findings));
        panels.DrawText(canvas);
        for (var index = 0; index < findings.Count; index++)
        {
            Draw(canvas, panels, index, findings[index]);
        }

        return canvas.Root;
    }

    private static List<StickFinding> Of(FindingsDocument document) => [.. (document.Sticks?.Conditions ?? []).Where(finding => finding.Clouds.Count > 0 || finding.Returns.Count > 0)];

    private static void Draw(Canvas canvas, SquarePanels panels, int index, StickFinding finding)
    {
        var reach = Reach(finding);
        var ticks = Ticks.Cover(-reach, reach, 4);
        var (left, top) = panels.Place(canvas, index);
        var across = Scale.Linear(ticks.Low, ticks.High, left, left + panels.Side);
        var up = Scale.Linear(ticks.Low, ticks.High, top + panels.Side, top);
        canvas.Box(left, top, panels.Side, panels.Side, "band");
        canvas.Line(left, up.At(0), left + panels.Side, up.At(0), "rule", 0.07);
        canvas.Line(across.At(0), top, across.At(0), top + panels.Side, "rule", 0.07);
        foreach (var cloud in finding.Clouds)
        {
            canvas.Squares(cloud.Points.Where(point => across.Holds(point.X) && up.Holds(point.Y)).Select(point => (across.At(point.X), up.At(point.Y))), 0.16, "pale");
        }

        foreach (var cloud in finding.Clouds)
        {
            canvas.Trace(Ellipse(cloud).Select(point => (across.At(point.X), up.At(point.Y))), "mark", width: 0.12);
        }

        foreach (var direction in finding.Returns)
        {
            var angle = direction.Degrees * Math.PI / 180;
            var (x, y) = (across.At(direction.X), up.At(direction.Y));
            canvas.Line(x, y, x + (0.9 * Math.Cos(angle)), y - (0.9 * Math.Sin(angle)), "reference-line", 0.12);
            canvas.Dot(x, y, 0.22, "reference-solid");
        }

        canvas.Text(left + panels.Side - 0.2, up.At(0) - 0.3, $"{Numbers.Plain(ticks.High)}{Numbers.NoBreakSpace}%", "soft", Anchor.End, 0.8);
        panels.DrawName(canvas, index, finding.Id, Offset(finding), Basis(finding));
    }

    private static double Reach(StickFinding finding)
    {
        var ends = finding.Clouds.SelectMany(cloud => new[] { Math.Abs(cloud.Ellipse.X) + cloud.Ellipse.SemiMajor, Math.Abs(cloud.Ellipse.Y) + cloud.Ellipse.SemiMajor })
            .Concat(finding.Returns.SelectMany(direction => new[] { Math.Abs(direction.X), Math.Abs(direction.Y) }));
        return Math.Max(0.05, 1.15 * ends.Max());
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

    private static string Offset(StickFinding finding) => finding.Estimate(StickMeasure.CentreOffset) is { } offset
        ? $"centre offset {StickWording.Value(offset)}{Numbers.NoBreakSpace}% ({StickWording.Bounds(offset)})"
        : "centre offset not told";

    private static string Basis(StickFinding finding) =>
        $"{Numbers.Count(finding.Clouds.Count, "session")} at rest, {Numbers.Count(finding.Returns.Sum(direction => direction.Releases), "release")}";

    private static List<string> Notes(List<StickFinding> findings)
    {
        var notes = new List<string> { $"About the middle of the range, in per cent of half of it; each panel has its own scale. Pale: positions at rest; blue: what holds 95{Numbers.NoBreakSpace}% of a session's, were they normal. Offsets with 95{Numbers.NoBreakSpace}% intervals." };
        if (findings.Any(finding => finding.Returns.Count > 0))
        {
            notes.Add("Orange: the mean place of rest after release, the tail towards the side from which it came.");
        }

        return notes;
    }

    private static string Description(List<StickFinding> findings) =>
        $"Where each stick rests. {string.Join(' ', findings.Select(finding => $"{finding.Id}: {Offset(finding)}; {Basis(finding)}."))}";
}
