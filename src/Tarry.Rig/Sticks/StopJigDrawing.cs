using System.Globalization;
using System.Text;

namespace Tarry.Rig.Sticks;

/// <summary>Draws a jig as SVG at its true size, with a bar to check the print against and the uncertainty of its angles.</summary>
public static class StopJigDrawing
{
    private const double LabelMm = 8;
    private const double RimMm = 16;
    private const double BarMm = 100;
    private const double WidthMm = 180;

    /// <summary>The drawing.</summary>
    /// <exception cref="ArgumentException">The sizes do not go together.</exception>
    public static string Svg(StopJig jig)
    {
        ArgumentNullException.ThrowIfNull(jig);
        if (jig.Broken() is { } broken)
        {
            throw new ArgumentException($"This jig cannot be: {broken}.", nameof(jig));
        }

        var outer = jig.PointMm + RimMm;
        var (centreX, centreY) = (WidthMm / 2, outer + 8);
        var height = centreY + outer + 72;
        var svg = new StringBuilder();
        Line(svg, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{WidthMm}mm\" height=\"{height:0.##}mm\" viewBox=\"0 0 {WidthMm} {height:0.##}\" font-family=\"sans-serif\" font-size=\"2.8\" fill=\"none\" stroke=\"black\" stroke-width=\"0.2\">");
        Line(svg, $"<title>Stop jig, {jig.Stops} stops at {jig.RadiusMm} mm</title>");
        Line(svg, $"<rect x=\"0\" y=\"0\" width=\"{WidthMm}\" height=\"{height:0.##}\" fill=\"white\" stroke=\"none\"/>");
        Line(svg, $"<g transform=\"translate({centreX:0.##} {centreY:0.##})\">");
        Line(svg, $"<circle r=\"{outer:0.###}\"/>");
        Line(svg, $"<path d=\"{Hole(jig)}\"/>");
        foreach (var angle in jig.AnglesDeg)
        {
            var (outX, outY) = At(outer, angle);
            var (inX, inY) = At(outer - 3, angle);
            var (textX, textY) = At(outer - LabelMm, angle);
            Line(svg, $"<line x1=\"{inX:0.###}\" y1=\"{inY:0.###}\" x2=\"{outX:0.###}\" y2=\"{outY:0.###}\"/>");
            Text(svg, textX, textY + 1.1, string.Create(CultureInfo.InvariantCulture, $"{angle:0.##}°"), "middle");
        }

        Line(svg, $"<path d=\"M -2 0 H 2 M 0 -2 V 2\"/>");
        Line(svg, $"</g>");
        Check(svg, centreY, centreY + outer + 10);
        Words(svg, jig, centreY + outer + 24);
        Line(svg, $"</svg>");
        return svg.ToString();
    }

    /// <summary>The hole: arcs, and between them notches of 90 degrees; angles run counter-clockwise, and y of a drawing down.</summary>
    private static string Hole(StopJig jig)
    {
        var (point, hole, half) = (jig.PointMm, jig.HoleMm, jig.HalfNotchDeg);
        var path = new StringBuilder();
        foreach (var angle in jig.AnglesDeg)
        {
            var (fromX, fromY) = At(hole, angle - half);
            var (pointX, pointY) = At(point, angle);
            var (toX, toY) = At(hole, angle + half);
            var reach = path.Length == 0 ? string.Create(CultureInfo.InvariantCulture, $"M {fromX:0.###} {fromY:0.###}") : Arc(hole, fromX, fromY);
            path.Append(CultureInfo.InvariantCulture, $"{reach} L {pointX:0.###} {pointY:0.###} L {toX:0.###} {toY:0.###} ");
        }

        var (firstX, firstY) = At(hole, jig.AnglesDeg[0] - half);
        return path.Append(Arc(hole, firstX, firstY)).Append(" Z").ToString();
    }

    private static string Arc(double radius, double x, double y) =>
        string.Create(CultureInfo.InvariantCulture, $"A {radius:0.###} {radius:0.###} 0 0 0 {x:0.###} {y:0.###}");

    private static void Check(StringBuilder svg, double middle, double y)
    {
        var x = (WidthMm - BarMm) / 2;
        Line(svg, $"<path id=\"scale-bar\" d=\"M {x:0.##} {y:0.##} h {BarMm} M {x:0.##} {y - 2:0.##} v 4 M {x + (BarMm / 2):0.##} {y - 1:0.##} v 2 M {x + BarMm:0.##} {y - 2:0.##} v 4\"/>");
        Line(svg, $"<path d=\"M 12 {middle - 25:0.##} v 50 M 10 {middle - 25:0.##} h 4 M 10 {middle + 25:0.##} h 4\"/>");
        Text(svg, WidthMm / 2, y + 6, "This bar must measure 100 mm, the upright one at the left 50 mm: print at 100 %, without fitting to the page.", "middle");
    }

    private static void Words(StringBuilder svg, StopJig jig, double y)
    {
        string[] lines =
        [
            string.Create(CultureInfo.InvariantCulture, $"Angles: counter-clockwise from right, seen by the player. Stem {jig.StemMm} mm, its axis {jig.RadiusMm} mm from the centre at a stop, points at {jig.PointMm:0.00} mm."),
            "Cut the outer circle and the hole with its notches. Lay the centre over the stick at rest, 0° to the right of the device.",
            "Standard uncertainty of a stop's angle: u = sqrt(print² + cut² + centring²) / (sqrt(3) · radius)",
            string.Create(CultureInfo.InvariantCulture, $"= sqrt({jig.PrintToleranceMm}² + {jig.CutToleranceMm}² + {jig.CentringToleranceMm}²) mm / (1.732 · {jig.RadiusMm} mm) = {jig.UncertaintyDeg * Math.PI / 180:0.0000} rad = {jig.UncertaintyDeg:0.00}°"),
            "with half widths in mm, each uniform (JCGM 100:2008, 4.3.7). A jig that lies turned shifts all angles alike; that comes on top.",
            "Measure before you trust it: what your printer and your knife do is for you to state as tolerances.",
            "Caution: mind fingers and eyes, cut away from you; tape that leaves no glue; never force the stick. Local rules go before this.",
        ];
        for (var index = 0; index < lines.Length; index++)
        {
            Text(svg, WidthMm / 2, y + 2 + (5 * index), lines[index], "middle");
        }
    }

    private static (double X, double Y) At(double radius, double angleDeg)
    {
        var (sine, cosine) = Math.SinCos(angleDeg * Math.PI / 180);
        return (radius * cosine, -radius * sine);
    }

    private static void Text(StringBuilder svg, double x, double y, string text, string anchor) =>
        Line(svg, $"<text x=\"{x:0.##}\" y=\"{y:0.##}\" text-anchor=\"{anchor}\" fill=\"black\" stroke=\"none\">{text}</text>");

    private static void Line(StringBuilder svg, FormattableString text) => svg.Append(text.ToString(CultureInfo.InvariantCulture)).Append('\n');
}
