using Tarry.Metrology;
using Tarry.Statistics.Intervals;

namespace Tarry.Statistics.Tests.Intervals;

public class MagnitudeIntervalTests
{
    [Theory]
    [InlineData(1.3, 0.7, 19)]
    [InlineData(3, 2.5, 5)]
    [InlineData(6, 5, 40)]
    public void Below_AnySeenLength_IsNoncentralF(double seen, double length, double degreesOfFreedom)
    {
        var expected = OutsideProgram.SciPy("p([stats.ncf.cdf(x[0]**2 / 2, 2, x[2], x[1]**2)])", seen, length, degreesOfFreedom);
        Assert.Equal(expected[0], MagnitudeInterval.Below(seen, length, degreesOfFreedom), 1e-9);
    }

    [Fact]
    public void Below_WithKnownScale_IsRice()
    {
        var expected = OutsideProgram.SciPy("p([stats.rice.cdf(x[0], x[1])])", 2.2, 1.5);
        Assert.Equal(expected[0], MagnitudeInterval.Below(2.2, 1.5, double.PositiveInfinity), 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(20)]
    public void Of_EstimatedVectors_CoversAsStated(double length)
    {
        var random = new SeededGenerator(10);
        var covered = 0;
        const int rounds = 1_000;
        for (var round = 0; round < rounds; round++)
        {
            var (x, y) = (length + random.NextNormal(), random.NextNormal());
            var variance = Enumerable.Range(0, 18).Sum(_ => Math.Pow(random.NextNormal(), 2)) / 18;
            covered += MagnitudeInterval.Of(Math.Sqrt((x * x) + (y * y)), Math.Sqrt(variance), 18).Contains(length) ? 1 : 0;
        }

        // At a length of 0 only the low limit can miss, so that 97.5 % are covered.
        var nominal = length == 0 ? 0.975 : 0.95;
        Assert.InRange((double)covered / rounds, nominal - (4 * Math.Sqrt(nominal * (1 - nominal) / rounds)), length is > 0 and <= 3 ? 0.985 : nominal + (4 * Math.Sqrt(nominal * (1 - nominal) / rounds)));
    }
}
