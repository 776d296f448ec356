using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>A square panel of positions about the middle of the range: the axes with their scale, one step of them, and the stick's centre.</summary>
internal sealed class PositionPlane
{
    private const double LeastReach = 0.05;
    private const double LabelSize = 0.75;
    private const double Labelled = 0.88;
    private const double CrossWidth = 0.18;
    private const double CrossCap = 0.35;

    // A step that is drawn smaller than this is a dot.
    private const double LeastStep = 0.5;

    private readonly Canvas canvas;
    private readonly Scale across;
    private readonly Scale up;

    /// <summary>Draws the panel, empty but for its axes.</summary>
    /// <param name="canvas">The drawing.</param>
    /// <param name="left">Its left end.</param>
    /// <param name="top">Its top.</param>
    /// <param name="side">Its side.</param>
    /// <param name="finding">Whose positions are shown; its centre and its steps fit in.</param>
    /// <param name="ends">How far positions lie from the middle, along an axis each, in per cent of half the range.</param>
    public PositionPlane(Canvas canvas, double left, double top, double side, StickFinding finding, IEnumerable<double> ends)
    {
        this.canvas = canvas;
        var centre = new[] { Centre(finding, StickPart.X), Centre(finding, StickPart.Y) }.OfType<StickEstimate>().SelectMany(estimate => new[] { estimate.Low, estimate.High });
        var reach = 1.2 * ends.Concat(centre).Append(finding.StepX ?? 0).Append(finding.StepY ?? 0).Append(LeastReach).Max(Math.Abs);
        var ticks = Ticks.Cover(-reach, reach, 8);
        across = Scale.Linear(-reach, reach, left, left + side);
        up = Scale.Linear(-reach, reach, top + side, top);
        canvas.Box(left, top, side, side, "band");
        IEnumerable<(double, double, double, double)> Grid(IEnumerable<double> at) =>
            at.SelectMany(tick => new[] { (across.At(tick), top, across.At(tick), top + side), (left, up.At(tick), left + side, up.At(tick)) });
        canvas.Lines(Grid(ticks.Values.Where(across.Holds)), "rule", 0.05);
        canvas.Lines(Grid([0]), "axis", 0.05);
        foreach (var tick in ticks.Values.Where(tick => Math.Abs(tick) <= Labelled * reach))
        {
            canvas.Text(across.At(tick), top + side - 0.3, $"{Numbers.Plain(tick)}{Numbers.NoBreakSpace}%", "soft", Anchor.Middle, LabelSize);
            canvas.Text(left + 0.3, up.At(tick) - 0.2, tick == 0 ? "" : $"{Numbers.Plain(tick)}{Numbers.NoBreakSpace}%", "soft", size: LabelSize);
        }

        DrawStep(finding);
    }

    /// <summary>Where a position is drawn.</summary>
    public (double X, double Y) At(double x, double y) => (across.At(x), up.At(y));

    /// <summary>Whether a position lies in the panel.</summary>
    public bool Holds(double x, double y) => across.Holds(x) && up.Holds(y);

    /// <summary>The stick's centre: a cross of the intervals of its two coordinates.</summary>
    public void DrawCentre(StickFinding finding)
    {
        if (Centre(finding, StickPart.X) is not { } x || Centre(finding, StickPart.Y) is not { } y)
        {
            return;
        }

        var (middleX, middleY) = At(x.Value, y.Value);
        canvas.Line(across.At(x.Low), middleY, across.At(x.High), middleY, "axis", CrossWidth);
        canvas.Line(middleX, up.At(y.Low), middleX, up.At(y.High), "axis", CrossWidth);
        foreach (var end in new[] { across.At(x.Low), across.At(x.High) })
        {
            canvas.Line(end, middleY - CrossCap, end, middleY + CrossCap, "axis", CrossWidth);
        }

        foreach (var end in new[] { up.At(y.Low), up.At(y.High) })
        {
            canvas.Line(middleX - CrossCap, end, middleX + CrossCap, end, "axis", CrossWidth);
        }
    }

    private static StickEstimate? Centre(StickFinding finding, StickPart part) => finding.Estimate(StickMeasure.CentreOffset, part);

    private void DrawStep(StickFinding finding)
    {
        if (finding.StepX is not { } x || finding.StepY is not { } y)
        {
            return;
        }

        var (left, top) = At(-x / 2, y / 2);
        var (right, bottom) = At(x / 2, -y / 2);
        if (right - left >= LeastStep && bottom - top >= LeastStep)
        {
            canvas.Box(left, top, right - left, bottom - top, "axis", 0.09);
        }
    }
}
