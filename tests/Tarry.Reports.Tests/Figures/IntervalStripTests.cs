using System.Globalization;
using System.Xml.Linq;
using Tarry.Reports.Figures;
using Tarry.Reports.Merits;

namespace Tarry.Reports.Tests.Figures;

public sealed class IntervalStripTests
{
    private static MeritValue Mean(double mean, double half, int sessions = 4) =>
        FiguresOfMerit.Mean.Of(Samples.Condition("a", mean, 1) with { Mean = Samples.Latency(mean, half, sessions) });

    [Fact]
    public void Cover_Values_HoldsThemAndTheirIntervals()
    {
        MeritValue[] values = [Mean(3, 0.2), Mean(7, 1)];
        var axis = StripAxis.Cover(values, [(2.5, 8.5)], 6);
        Assert.All(values, value => Assert.True(axis.Holds(value.Low!.Value) && axis.Holds(value.High!.Value)));
        Assert.True(axis.Holds(2.5) && axis.Holds(8.5));
        Assert.False(axis.LeavesOutZero);
        Assert.All(axis.Labels, label => Assert.InRange(label.Percent, 0, 100));
    }

    [Fact]
    public void Cover_AnIntervalFarBeyondAll_IsCut()
    {
        var axis = StripAxis.Cover([Mean(3, 0.2), Mean(3.5, 0.2), Mean(4, 90)], [], 6);
        Assert.False(axis.Holds(94));
        Assert.True(axis.Holds(4));
    }

    [Fact]
    public void Cover_Nothing_StillHasAnAxis() => Assert.NotEmpty(StripAxis.Cover([MeritValue.None("not known")], [], 6).Labels);

    [Fact]
    public void Draw_AValue_StandsWhereTheAxisHasIt()
    {
        var axis = StripAxis.Cover([Mean(0.5, 0.1), Mean(10, 0)], [], 5);
        var root = XElement.Parse(IntervalStrip.Draw(axis, Mean(5, 0.5), (4.2, 6.1), isReference: false, referenceAt: 2));
        var dot = root.Elements().Single(element => element.Name.LocalName == "circle");
        Assert.Equal(1.5 + (97 * 5 / 10.0), double.Parse(dot.Attribute("cx")!.Value.TrimEnd('%'), CultureInfo.InvariantCulture), 2);
        Assert.Equal("mark-solid", dot.Attribute("class")!.Value);
        Assert.Equal("true", root.Attribute("aria-hidden")!.Value);
        Assert.Contains("mark-open", IntervalStrip.Draw(axis, Mean(5, 0.5, 1), null, isReference: false, referenceAt: null), StringComparison.Ordinal);
    }
}
