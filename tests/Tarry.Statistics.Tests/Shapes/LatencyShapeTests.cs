using Tarry.Metrology;
using Tarry.Statistics.Shapes;

namespace Tarry.Statistics.Tests.Shapes;

public sealed class LatencyShapeTests
{
    // Closed form of U(0, T) + N(0, s^2), checked against quadrature in SciPy 1.10.1 to 1e-10.
    [Theory]
    [InlineData(8, 1, -1, .01983190674, .01041443382)]
    [InlineData(8, 1, 0, .0625, .04986778505)]
    [InlineData(8, 1, 1, .1051680933, .1354144338)]
    [InlineData(8, 1, 2, .1221562334, .2510613378)]
    [InlineData(8, 1, 8, .0625, .9501322149)]
    [InlineData(8, 1, 9, .01983190674, .9895855662)]
    [InlineData(8, .25, .5, .1221562335, .06276533446)]
    [InlineData(8, .25, 1, .1249960411, .1250002233)]
    [InlineData(4, 1, 0, .1249920822, .09973378379)]
    [InlineData(4, 1, 1, .209998712, .2707333291)]
    [InlineData(4, 1, 5, .03966374182, .9791711457)]
    [InlineData(1, .5, 0, .4772498681, .1952257889)]
    [InlineData(1, .5, 2, .02271846071, .9957582213)]
    public void OneBlock_DensityAndTails_AgreeWithQuadrature(double width, double noise, double x, double density, double lower)
    {
        var shape = new UniformNormalShape(0, width, noise);
        Close.Relative(density, shape.Density(x), 2e-9);
        Close.Relative(lower, shape.LowerTail(x), 2e-9);
        Close.Absolute(1 - lower, shape.UpperTail(x), 1e-10);
    }

    // The same, sd and quantiles .05, .95, .99.
    [Theory]
    [InlineData(8, 1, 2.516611478, .00211366, 7.99788634, 9.02123888)]
    [InlineData(8, .25, 2.322893311, .39384362, 7.60615638, 8.04232269)]
    [InlineData(4, 1, 1.527525232, -.49288502, 4.49288502, 5.36023516)]
    [InlineData(1, .5, .5773502692, -.44969678, 1.44969678, 1.83121118)]
    public void OneBlock_SpreadAndQuantiles_AgreeWithQuadrature(double width, double noise, double sd, double q05, double q95, double q99)
    {
        var shape = new UniformNormalShape(0, width, noise);
        Close.Relative(sd, Math.Sqrt(shape.Variance), 1e-9);
        Close.Absolute(q05, shape.Quantile(0.05), 1e-8);
        Close.Absolute(q95, shape.Quantile(0.95), 1e-8);
        Close.Absolute(q99, shape.Quantile(0.99), 1e-8);
    }

    // SciPy 1.10.1, exponnorm(tau / sigma, loc=mu, scale=sigma).
    [Theory]
    [InlineData(0, 1, 1, .2615782919, .2384217081, .3032653299, .5380794162, .87579834, 3.49416639, 5.10516651)]
    [InlineData(10, 1, 2, .1748094174, .1503811653, .1945063174, .5882372332, 11.57679983, 16.24146455, 19.46034037)]
    [InlineData(20, 3, 5, .06566811889, .1716594055, .07548459539, .5747866708, 24.05485553, 35.87866065, 43.92585093)]
    public void ExponentialTail_DensityCdfAndQuantiles_AgreeWithSciPy(
        double mu, double sigma, double tau, double density, double lower, double densityAtMean, double lowerAtMean, double median, double p95, double p99)
    {
        var shape = new ExponentiallyModifiedNormalShape(mu, sigma, tau);
        Close.Relative(density, shape.Density(mu), 1e-9);
        Close.Relative(lower, shape.LowerTail(mu), 1e-9);
        Close.Relative(densityAtMean, shape.Density(mu + tau), 1e-9);
        Close.Relative(lowerAtMean, shape.LowerTail(mu + tau), 1e-9);
        Close.Absolute(median, shape.Quantile(0.5), 1e-7);
        Close.Absolute(p95, shape.Quantile(0.95), 1e-7);
        Close.Absolute(p99, shape.Quantile(0.99), 1e-7);
    }

    // Trapezoid law of U(0, a) + U(0, b): (4, 8) and (8, 8); noise of 2 us moves it by less than the tolerance.
    [Theory]
    [InlineData(4, 8, 2, .0625, .0625)]
    [InlineData(4, 8, 6, .125, .5)]
    [InlineData(4, 8, 10, .0625, .9375)]
    [InlineData(8, 8, 6, .09375, .28125)]
    public void TwoBlocks_HardlyAnyNoise_AreTheTrapezoid(double first, double second, double x, double density, double lower)
    {
        var shape = new UniformUniformNormalShape(0, first, second, 0.002);
        Close.Absolute(density, shape.Density(x), 1e-6);
        Close.Absolute(lower, shape.LowerTail(x), 1e-6);
    }

    [Fact]
    public void TwoBlocks_AnyWidths_AgreeWithSciPysConvolution()
    {
        var expected = OutsideProgram.SciPy("""
            from scipy import integrate
            for t1, t2, s in ((8, 4, .3), (4, 4, .5), (1, 6, .8)):
              g = lambda v, t2=t2, s=s: (stats.norm.cdf(v / s) - stats.norm.cdf((v - t2) / s)) / t2
              k = lambda z: z * stats.norm.cdf(z) + stats.norm.pdf(z)
              h = lambda v, t2=t2, s=s: s / t2 * (k(v / s) - k((v - t2) / s))
              for q in (-.5, .3, 2.1, 5.9):
                p(integrate.quad(lambda w: g(q - w), 0, t1, points=[q, q - t2] if q > t2 else None)[0] / t1, integrate.quad(lambda w: h(q - w), 0, t1)[0] / t1)
            """);
        var at = 0;
        foreach (var (first, second, noise) in new[] { (8, 4, .3), (4, 4, .5), (1, 6, .8) })
        {
            var shape = new UniformUniformNormalShape(0, first, second, noise);
            foreach (var x in new[] { -.5, .3, 2.1, 5.9 })
            {
                Close.Absolute(expected[at++], shape.Density(x), 1e-9);
                Close.Absolute(expected[at++], shape.LowerTail(x), 1e-8);
            }
        }
    }

    [Fact]
    public void Tails_FarOut_KeepTheirDigits()
    {
        // SciPy: norm.logsf for the normal; exponnorm.sf for the tail.
        var expected = OutsideProgram.SciPy("p(stats.norm.sf([3, 8, 20, 35]), stats.exponnorm.sf(np.array([30., 60., 200.]), 2 / .5, loc=6, scale=.5), stats.exponnorm.cdf(np.array([3., 4., 5.]), 2 / .5, loc=6, scale=.5))");
        var normal = new NormalShape(0, 1);
        var tail = new ExponentiallyModifiedNormalShape(6, 0.5, 2);
        double[] found = [.. new[] { 3.0, 8, 20, 35 }.Select(normal.UpperTail), .. new[] { 30.0, 60, 200 }.Select(tail.UpperTail), .. new[] { 3.0, 4, 5 }.Select(tail.LowerTail)];
        for (var i = 0; i < expected.Length; i++)
        {
            Close.Relative(expected[i], found[i], 1e-7);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Draws_AnyShape_FollowTheDistributionFunction(int which)
    {
        LatencyShape shape = which switch
        {
            0 => new NormalShape(6, 1.2),
            1 => new UniformNormalShape(6, 8, 0.3),
            2 => new UniformUniformNormalShape(6, 8, 4, 0.3),
            3 => new ExponentiallyModifiedNormalShape(6, 0.5, 2),
            _ => new TwoLumpShape(new UniformNormalShape(6, 2, 0.3), new UniformNormalShape(11, 2, 0.3), 0.3),
        };
        var generator = new SeededGenerator(17);
        var values = PublishedData.Sorted([.. Enumerable.Range(0, 20_000).Select(_ => shape.Draw(generator))]);
        var distance = values.Select((x, i) => Math.Max(Math.Abs(shape.LowerTail(x) - ((double)i / values.Length)), Math.Abs(shape.LowerTail(x) - ((i + 1.0) / values.Length)))).Max();

        // Kolmogorov: 1.95 / sqrt(n) is exceeded once in a thousand.
        Assert.True(distance < 1.95 / Math.Sqrt(values.Length), $"distance {distance}");
        Close.Absolute(shape.Mean, values.Average(), 4 * Math.Sqrt(shape.Variance / values.Length));
    }

    [Fact]
    public void Shapes_NoWidth_SaySo()
    {
        Assert.Contains("blockMs is 0", Assert.Throws<ArgumentOutOfRangeException>(() => new UniformNormalShape(0, 0, 1)).Message, StringComparison.Ordinal);
        Assert.Contains("sdMs is -1", Assert.Throws<ArgumentOutOfRangeException>(() => new NormalShape(0, -1)).Message, StringComparison.Ordinal);
    }
}
