using Tarry.Metrology;
using Tarry.Statistics.Intervals;

namespace Tarry.Statistics.Tests.Intervals;

public class DeviationIntervalTests
{
    // Standard deviations by formula: normal 1, uniform 1 / sqrt(12), exponential 1.
    [Theory]
    [InlineData("normal", 1)]
    [InlineData("uniform", 0.28867513459481287)]
    [InlineData("exponential", 1)]
    public void Of_ManySamples_HoldsTheTruthAboutAsOftenAsItSays(string law, double truth)
    {
        const int samples = 1_000;
        var held = 0;
        for (ulong sample = 0; sample < samples; sample++)
        {
            var generator = SeededGenerator.ForPart(31, sample);
            var values = Enumerable.Range(0, 500).Select(_ => law switch
            {
                "normal" => generator.NextNormal(),
                "uniform" => generator.NextDouble(),
                _ => -Math.Log(1 - generator.NextDouble()),
            }).ToArray();
            held += DeviationInterval.Of(values)!.Value.Contains(truth) ? 1 : 0;
        }

        // 95 % less five standard errors of the count, and less what tails cost at this size.
        Assert.InRange(held, 900, 985);
    }

    [Fact]
    public void Of_TooFewOrEqualValues_IsNone()
    {
        Assert.Null(DeviationInterval.Of([1, 2, 3]));
        Assert.Null(DeviationInterval.Of(Enumerable.Repeat(2.0, 50).ToArray()));
    }
}
