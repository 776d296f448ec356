using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Reshaping;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The map of each layer: what is said with it over what is said without, along an axis, and how far the stick reaches over angle.</summary>
internal static class ReshapingFigure
{
    private const double MostReach = 1.45;

    /// <summary>Whether a layer was recorded beside its counterpart.</summary>
    public static bool IsWorthDrawing(FindingsDocument document) => Of(document).Count > 0;

    /// <summary>The figure.</summary>
    public static XElement Build(FindingsDocument document, FigureStyle style)
    {
        var drawn = Of(document);
        return SquarePanels.Draw(
            style,
            new("stick-reshaping", $"What each layer does to positions: {document.Title}", $"{document.Title}: what each layer does to positions", Description(drawn), Notes(drawn)),
            drawn,
            entry => entry.IsMap
                ? new PanelCaption($"{entry.Finding.Layer}: {entry.Finding.With}", ["across: said without, % of half the range", "upwards: said with it; dashed: nothing changed", Basis(entry.Finding.Exponent, entry.Finding.DeadZone)])
                : new PanelCaption($"{entry.Finding.Layer}: reach", ["how far it reaches with it, by direction", "dashed: as far as without; square: a full square", Basis(entry.Finding.Squareness)]),
            (canvas, panels, left, top, entry) =>
            {
                if (entry.IsMap)
                {
                    DrawMap(canvas, panels.Side, left, top, entry.Finding);
                }
                else
                {
                    DrawReach(canvas, panels.Side, left, top, entry.Finding);
                }
            });
    }

    private static List<(ReshapingFinding Finding, bool IsMap)> Of(FindingsDocument document) =>
    [
        .. (document.Sticks?.Reshapings ?? []).SelectMany(finding => new[] { (finding, true), (finding, false) })
            .Where(entry => entry.Item2 ? entry.finding.Map.Count > 0 : entry.finding.ReachRatio.Count > 0),
    ];

    private static void DrawMap(Canvas canvas, double side, double left, double top, ReshapingFinding reshaping)
    {
        var across = Scale.Linear(0, 105, left, left + side);
        var up = Scale.Linear(0, 105, top + side, top);
        canvas.Box(left, top, side, side, "band");
        foreach (var tick in new[] { 25, 50, 75, 100 })
        {
            canvas.Line(across.At(tick), top, across.At(tick), top + side, "rule", 0.05);
            canvas.Line(left, up.At(tick), left + side, up.At(tick), "rule", 0.05);
            canvas.Text(left + 0.3, up.At(tick) - 0.2, $"{tick}{Numbers.NoBreakSpace}%", "soft", size: 0.75);
            canvas.Text(across.At(tick) - 0.2, top + side - 0.3, $"{tick}{Numbers.NoBreakSpace}%", "soft", Anchor.End, 0.75);
        }

        canvas.Line(across.At(0), up.At(0), across.At(100), up.At(100), "axis", 0.07, dashed: true);
        var map = reshaping.Map.OrderBy(point => point.Without).ToList();
        canvas.Trace(map.Select(point => (across.At(point.Without), up.At(point.High))).Concat(map.AsEnumerable().Reverse().Select(point => (across.At(point.Without), up.At(point.Low)))), "pale", closed: true);
        canvas.Trace(map.Select(point => (across.At(point.Without), up.At(point.With))), "mark", width: 0.17);
        foreach (var point in map)
        {
            canvas.Dot(across.At(point.Without), up.At(point.With), 0.17, "mark-solid");
        }
    }

    private static void DrawReach(Canvas canvas, double side, double left, double top, ReshapingFinding reshaping)
    {
        var (x, y) = (left + (side / 2), top + (side / 2));
        var unit = side / 2 / MostReach;
        (double, double) At(double turn, double distance) => (x + (Math.Min(distance, MostReach) * unit * Math.Cos(2 * Math.PI * turn)), y - (Math.Min(distance, MostReach) * unit * Math.Sin(2 * Math.PI * turn)));
        canvas.Box(left, top, side, side, "band");
        canvas.Box(x - unit, y - unit, 2 * unit, 2 * unit, "rule", 0.06);
        canvas.Ring(x, y, unit, "axis", 0.07, dashed: true);
        var ratios = reshaping.ReachRatio;
        canvas.Trace(Enumerable.Range(0, ratios.Count + 1).Select(sector => At((sector + 0.5) / ratios.Count, ratios[sector % ratios.Count])), "mark", width: 0.17);
    }

    private static string Basis(params IReadOnlyList<StickOutcome> outcomes) =>
        outcomes.OfType<StickEstimate>().FirstOrDefault() is { } estimate ? StickWording.Basis(estimate) : "without an interval";

    private static List<string> Notes(List<(ReshapingFinding Finding, bool IsMap)> drawn) =>
    [
        $"Pale: 95{Numbers.NoBreakSpace}% interval of each point over sweeps or sessions with the layer; both sides of an axis together.",
        .. drawn.Select(entry => StickWording.Sentence(entry.Finding)).Distinct(),
    ];

    private static string Description(List<(ReshapingFinding Finding, bool IsMap)> drawn) =>
        $"What each layer does to positions. {string.Join(' ', drawn.Select(entry => StickWording.Sentence(entry.Finding)).Distinct())}";
}
