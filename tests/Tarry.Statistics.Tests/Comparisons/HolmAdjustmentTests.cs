using Tarry.Metrology;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Tests.Comparisons;

public sealed class HolmAdjustmentTests
{
    // The 15 p values of Y. Benjamini and Y. Hochberg, J. R. Statist. Soc. B 57 (1995); R 4.2.2 p.adjust(method = "holm").
    [Fact]
    public void Adjust_PublishedValues_AgreesWithR()
    {
        double[] p = [.0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528, .7590, 1];
        double[] expected = [.0015, .0056, .0247, .1140, .2211, .2780, .2780, .2780, .3213, 1, 1, 1, 1, 1, 1];
        var adjusted = HolmAdjustment.Adjust(p);
        for (var i = 0; i < p.Length; i++)
        {
            Close.Absolute(expected[i], adjusted[i], 1e-12);
        }

        Assert.Equal(3, adjusted.Count(value => value < 0.05));
    }

    // R: p.adjust(c(.04, .01, .03, .005), "holm").
    [Fact]
    public void Adjust_Unsorted_KeepsTheOrderGiven()
    {
        double[] expected = [.06, .03, .06, .02];
        var adjusted = HolmAdjustment.Adjust([.04, .01, .03, .005]);
        for (var i = 0; i < expected.Length; i++)
        {
            Close.Absolute(expected[i], adjusted[i], 1e-15);
        }
    }

    [Fact]
    public void Adjust_RandomValuesWithTies_AgreesWithR()
    {
        var generator = new SeededGenerator(4);
        var p = Enumerable.Range(0, 276).Select(_ => Math.Round(Math.Pow(generator.NextDouble(), 4), 3)).ToArray();
        var expected = OutsideProgram.R("p(p.adjust(x, 'holm'))", p);
        var adjusted = HolmAdjustment.Adjust(p);
        for (var i = 0; i < p.Length; i++)
        {
            Close.Absolute(expected[i], adjusted[i], 1e-14);
        }
    }

    // 23 comparisons with one reference, none of them real: one false "told" in at most 5 % of studies.
    [Fact]
    public void Adjust_NoTrueDifference_KeepsTheFamilywiseError()
    {
        const int repetitions = 1000;
        var generator = new SeededGenerator(29);
        var p = new double[23];
        var wrong = 0;
        for (var repetition = 0; repetition < repetitions; repetition++)
        {
            var reference = generator.NextNormal();
            for (var i = 0; i < p.Length; i++)
            {
                p[i] = 2 * NormalDistribution.Cdf(-Math.Abs(generator.NextNormal() - reference) / Math.Sqrt(2));
            }

            wrong += HolmAdjustment.Adjust(p).Min() < 0.05 ? 1 : 0;
        }

        Assert.True(wrong <= repetitions * (0.05 + (4 * Math.Sqrt(0.05 * 0.95 / repetitions))), $"{wrong} of {repetitions}");
        Assert.True(wrong >= 5, $"{wrong} of {repetitions}: so few that the adjustment cannot be working on these values");
    }

    [Fact]
    public void Adjust_NotAProbability_SaysWhich() =>
        Assert.Contains("p[1] is 1.5", Assert.Throws<ArgumentException>(() => HolmAdjustment.Adjust([0.5, 1.5])).Message, StringComparison.Ordinal);
}
