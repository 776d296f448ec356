using Tarry.Metrology;
using Tarry.Statistics.Quantiles;

namespace Tarry.Statistics.Tests.Quantiles;

public sealed class DistributionBandTests
{
    // sqrt(ln(2 / alpha) / (2 n)) with SciPy's logarithm, 12 digits.
    [Theory]
    [InlineData(20, 0.95, 0.303680730954)]
    [InlineData(100, 0.95, 0.135810151574)]
    [InlineData(1000, 0.95, 0.0429469408347)]
    [InlineData(20, 0.99, 0.363947708007)]
    [InlineData(100, 0.99, 0.162762363072)]
    [InlineData(1000, 0.99, 0.0514699784658)]
    public void HalfHeight_PublishedFormula_Agrees(int trials, double confidence, double expected) =>
        Close.Absolute(expected, DistributionBand.HalfHeight(trials, confidence), 1e-12);

    // Nerve pulses: 799 waiting times, +-0.048 at 95 % (L. Wasserman, All of Nonparametric Statistics, 2006, chapter 2; from memory).
    [Fact]
    public void HalfHeight_NervePulses_AgreesWithTheTextbook() => Close.Absolute(0.048, DistributionBand.HalfHeight(799), 0.0005);

    // Exact 5 % points of the two-sided Kolmogorov statistic (L. H. Miller, J. Am. Stat. Assoc. 51, 1956): never above the band.
    [Theory]
    [InlineData(10, 0.40925)]
    [InlineData(20, 0.29408)]
    [InlineData(100, 0.13403)]
    public void HalfHeight_BesideExactPoints_IsWiderByLessThanATwentieth(int trials, double exact) =>
        Assert.InRange(DistributionBand.HalfHeight(trials) / exact, 1, 1.05);

    [Fact]
    public void HalfHeight_SimulatedUniformTrials_HoldsTheWholeCurveAtItsLevel()
    {
        const int studies = 2000;
        const int trials = 50;
        var random = new SeededGenerator(7);
        var half = DistributionBand.HalfHeight(trials);
        var held = 0;
        for (var study = 0; study < studies; study++)
        {
            var sorted = Enumerable.Range(0, trials).Select(_ => random.NextDouble()).Order().ToArray();
            var distance = sorted.Select((value, i) => Math.Max(((i + 1.0) / trials) - value, value - ((double)i / trials))).Max();
            held += distance <= half ? 1 : 0;
        }

        // At least 0.95, less four standard errors of a binomial share.
        Assert.True(held >= studies * (0.95 - (4 * Math.Sqrt(0.95 * 0.05 / studies))), $"{held} of {studies}");
    }

    [Theory]
    [InlineData(0, 0.95)]
    [InlineData(10, 0)]
    [InlineData(10, 1)]
    public void HalfHeight_OutsideItsRange_Throws(int trials, double confidence) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DistributionBand.HalfHeight(trials, confidence));
}
