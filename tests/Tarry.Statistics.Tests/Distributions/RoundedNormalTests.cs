using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Tests.Distributions;

public class RoundedNormalTests
{
    // The moments of rounded values by SciPy, from a known mean and standard deviation.
    [Theory]
    [InlineData(0.0, 0.4)]
    [InlineData(0.5, 0.4)]
    [InlineData(0.13, 0.3)]
    [InlineData(-2.31, 0.8)]
    [InlineData(7.77, 2.5)]
    public void StandardDeviation_OfTheMomentsOfRoundedValues_IsTheOneBeforeRounding(double mean, double deviation)
    {
        var moments = OutsideProgram.SciPy(
            "import numpy\nc = numpy.arange(-60, 61)\nw = stats.norm.cdf(c + .5, x[0], x[1]) - stats.norm.cdf(c - .5, x[0], x[1])\nm = (w * c).sum()\np([m, (w * (c - m) ** 2).sum()])",
            mean,
            deviation);
        Assert.Equal(deviation, RoundedNormal.StandardDeviation(moments[0], moments[1])!.Value, 1e-7);
    }

    // Two codes in turn, W. F. Sheppard's correction aside: f (1 - f) is what rounding alone makes of a mean between them.
    [Fact]
    public void StandardDeviation_OfTwoCodes_IsNotTold() => Assert.Null(RoundedNormal.StandardDeviation(0.3, 0.3 * 0.7));

    [Fact]
    public void StandardDeviation_OfMuchNoise_IsSheppards() => Assert.Equal(3, RoundedNormal.StandardDeviation(0.2, 9 + (1 / 12.0))!.Value, 1e-9);

    [Fact]
    public void StandardDeviation_OfNothing_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RoundedNormal.StandardDeviation(double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RoundedNormal.StandardDeviation(0, -1));
    }
}
