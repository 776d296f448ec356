using Tarry.Statistics.Distributions;
using Tarry.Statistics.Intervals;

namespace Tarry.Statistics.Tests.Intervals;

public class ResolutionHalfWidthTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(0.2, 1)]
    [InlineData(1, 0.3)]
    public void Of_ANormalAndARectangle_IsTheirConvolution(double standardError, double rectangular)
    {
        var expected = OutsideProgram.SciPy(
            "from scipy import integrate, optimize\ninside = lambda h: integrate.quad(lambda u: stats.norm.cdf((h - u) / x[0]) - stats.norm.cdf((-h - u) / x[0]), -x[1], x[1], epsabs=1e-13)[0] / 2 / x[1]\np([optimize.brentq(lambda h: inside(h) - .95, 0, 10)])",
            standardError,
            rectangular);
        Assert.Equal(expected[0], ResolutionHalfWidth.Of(standardError, double.PositiveInfinity, rectangular), 1e-8);
    }

    [Fact]
    public void Of_ARectangleAlone_IsItsShare() => Assert.Equal(0.475, ResolutionHalfWidth.Of(0, 5, 0.5), 1e-12);

    [Fact]
    public void Of_NoRectangle_IsStudents() => Assert.Equal(StudentDistribution.Quantile(0.975, 5) * 2, ResolutionHalfWidth.Of(2, 5, 0), 1e-12);
}
