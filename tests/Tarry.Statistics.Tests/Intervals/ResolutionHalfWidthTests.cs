using Tarry.Statistics.Distributions;
using Tarry.Statistics.Intervals;

namespace Tarry.Statistics.Tests.Intervals;

public class ResolutionHalfWidthTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(0.2, 1)]
    [InlineData(1, 0.3)]
    public void Of_AnErrorAtTheLimit_IsHeldAsOftenAsTheLevelSays(double standardError, double limit)
    {
        var expected = OutsideProgram.SciPy(
            "from scipy import optimize\np([optimize.brentq(lambda h: stats.norm.cdf(h, x[1], x[0]) - stats.norm.cdf(-h, x[1], x[0]) - .95, 0, 10, xtol=1e-13)])",
            standardError,
            limit);
        Assert.Equal(expected[0], ResolutionHalfWidth.Of(standardError, double.PositiveInfinity, limit), 1e-8);
    }

    [Fact]
    public void Of_TheLimitAlone_IsTheLimit() => Assert.Equal(0.5, ResolutionHalfWidth.Of(0, 5, 0.5), 1e-12);

    [Fact]
    public void Of_NoLimit_IsStudents() => Assert.Equal(StudentDistribution.Quantile(0.975, 5) * 2, ResolutionHalfWidth.Of(2, 5, 0), 1e-12);
}
