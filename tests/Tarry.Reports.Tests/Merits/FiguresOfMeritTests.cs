using Tarry.Metrology;
using Tarry.Reports.Merits;

namespace Tarry.Reports.Tests.Merits;

public sealed class FiguresOfMeritTests
{
    [Fact]
    public void All_OfAKnownCondition_HaveTheNumbersOfItsFindings()
    {
        var condition = Samples.Condition("quill-usb", 3.42, 1.1, missed: 15) with { Relative = Samples.Difference(1.29, 0.2) };
        var values = FiguresOfMerit.All.ToDictionary(figure => figure.Key, figure => figure.Of(condition));
        Assert.Equal(3.42, values["mean"].Value!.Value, 9);
        Assert.Equal(1.29, values["relative"].Value!.Value, 9);
        Assert.Equal(1.49, values["relative"].High!.Value, 9);
        Assert.Equal(1.0, values["missed"].Value!.Value, 9);
        Assert.Equal(1.1, values["interval"].Value!.Value, 9);
        Assert.Equal("3.42", values["mean"].Text);
        Assert.Equal("3.29\u00A0to\u00A03.55", values["mean"].Detail);
        Assert.Equal("4\u00A0sessions, 5,940\u00A0trials", values["mean"].Basis);
        Assert.All(values.Values, value => Assert.True(value.Low <= value.Value && value.Value <= value.High));
    }

    [Fact]
    public void Of_WhatIsNotKnown_HasWordsAndNoNumber()
    {
        var condition = Samples.Condition("a", 3, 1, 0) with { ReportInterval = null, P99 = new NotEnough<Latency>(5, 300, "trials") };
        foreach (var key in new[] { "mean", "p99", "relative", "interval" })
        {
            var value = FiguresOfMerit.Find(key)!.Of(condition);
            Assert.Null(value.Value);
            Assert.NotEmpty(value.Text);
        }

        Assert.Null(FiguresOfMerit.Find("speed"));
    }

    [Theory]
    [InlineData(3.0, 0.2, 3.3, 0.2, true)]
    [InlineData(3.0, 0.1, 3.3, 0.1, false)]
    [InlineData(3.3, 0.1, 3.0, 0.1, false)]
    public void Overlaps_TwoMeans_AsTheirIntervalsDo(double first, double half, double second, double otherHalf, bool expected)
    {
        MeritValue Of(double mean, double width) => FiguresOfMerit.Mean.Of(Samples.Condition("a", mean, 1) with { Mean = Samples.Latency(mean, width) });
        Assert.Equal(expected, Of(first, half).Overlaps(Of(second, otherHalf)));
        Assert.True(Of(first, half).Overlaps(MeritValue.None("not known")));
    }
}
