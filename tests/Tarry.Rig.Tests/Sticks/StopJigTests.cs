using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Tarry.Rig.Sticks;

namespace Tarry.Rig.Tests.Sticks;

public partial class StopJigTests
{
    [Fact]
    public void Uncertainty_OfTolerances_IsThatOfTheGuide()
    {
        // JCGM 100:2008, 4.3.7: a half width a, uniform, is a standard uncertainty of a / sqrt(3). Half widths 3 and 4 (hypotenuse 5)
        // over 100 mm: 5 / sqrt(3) / 100 = 0.028868 rad = 1.65399 degrees, by hand.
        var jig = new StopJig { PrintToleranceMm = 3, CutToleranceMm = 4, CentringToleranceMm = 0, RadiusMm = 100 };

        Assert.Equal(1.65399, jig.UncertaintyDeg, 1e-5);
    }

    [Fact]
    public void Svg_OfTheUsualJig_IsToScaleWithItsNotchesAtTheirAngles()
    {
        var jig = new StopJig();
        var svg = XDocument.Parse(StopJigDrawing.Svg(jig)).Root!;
        XNamespace space = "http://www.w3.org/2000/svg";

        // A user unit is a millimetre, so that the drawing prints at its size.
        var box = ((string)svg.Attribute("viewBox")!).Split(' ');
        Assert.Equal($"{box[2]}mm {box[3]}mm", $"{svg.Attribute("width")!.Value} {svg.Attribute("height")!.Value}");
        Assert.Contains("h 100", svg.Descendants(space + "path").Single(path => (string?)path.Attribute("id") == "scale-bar").Attribute("d")!.Value, StringComparison.Ordinal);
        var outline = svg.Descendants(space + "path").First().Attribute("d")!.Value;
        var points = Point().Matches(outline).Select(match => (X: Number(match, 1), Y: Number(match, 2))).ToList();
        // The farthest points are the notches' points, one a stop, at r + d / sqrt(2).
        var notches = points.Where(point => Math.Abs(Math.Sqrt((point.X * point.X) + (point.Y * point.Y)) - (8 + (5 / Math.Sqrt(2)))) < 0.002).ToList();
        Assert.Equal([0.0, 45, 90, 135, 180, 225, 270, 315], notches.Select(point => Math.Round((Math.Atan2(-point.Y, point.X) * 180 / Math.PI) + 360, 1) % 360));
        // The flanks of the first notch leave its point at 45 degrees, which holds a round stem on the notch's axis.
        var at = points.IndexOf(notches[0]);
        foreach (var end in new[] { points[at - 1], points[at + 1] })
        {
            Assert.Equal(1, Math.Abs(end.Y) / (notches[0].X - end.X), 0.002);
            // A stem of 5 mm touches 2.5 mm from the point (a circle in a right angle), so the flank must be longer.
            Assert.True(Math.Abs(end.Y) * Math.Sqrt(2) > 2.5);
        }
    }

    [Theory]
    [InlineData(3, 8, 5)]
    [InlineData(20, 8, 5)]
    [InlineData(8, 0, 5)]
    [InlineData(8, 2, 60)]
    public void Jig_ThatCannotBe_IsRefused(int stops, double radius, double stem)
    {
        var jig = new StopJig { Stops = stops, RadiusMm = radius, StemMm = stem };

        Assert.NotNull(jig.Broken());
        Assert.Throws<ArgumentException>(() => StopJigDrawing.Svg(jig));
    }

    [GeneratedRegex(@"(?:[ML]|A [0-9.]+ [0-9.]+ 0 0 0) (-?[0-9.]+) (-?[0-9.]+)")]
    private static partial Regex Point();

    private static double Number(Match match, int group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);
}
