using Tarry.Metrology;
using Tarry.Statistics.Play;

namespace Tarry.Statistics.Tests.Play;

public class HitOptimismTests
{
    // U(0, 8) + U(0, 4): trapezoid of height 1/8 over (4, 8), so that the fullest +-2 ms window holds exactly half.
    [Fact]
    public void Of_TwoSlots_TakesMostOfTheFlatteryAway()
    {
        const int simulations = 60;
        var random = new SeededGenerator(21);
        var (raw, corrected) = (0.0, 0.0);
        for (var i = 0; i < simulations; i++)
        {
            double[] values = [.. Enumerable.Range(0, 500).Select(_ => (8 * random.NextDouble()) + (4 * random.NextDouble())).Order()];
            var hits = new HitProbability([new TimingSession(values)]);
            var share = hits.Best(2, 0).Share;
            raw += (share - 0.5) / simulations;
            corrected += (share - HitOptimism.Of(hits, [(2, 0)], 60, random).Single() - 0.5) / simulations;
        }

        // A share of 500 has a standard error of .022, the mean over 60 of .003.
        Assert.InRange(raw, 0.012, 0.035);
        Assert.InRange(corrected, -0.012, 0.010);
    }

    [Fact]
    public void Of_ConstantLatency_IsNothing()
    {
        var hits = new HitProbability([new TimingSession([.. Enumerable.Repeat(12.0, 200)])]);

        Assert.All(HitOptimism.Of(hits, [(1, 0), (1, 2)], 20, new SeededGenerator(1)), optimism => Close.Absolute(0, optimism, 1e-12));
    }

    [Fact]
    public void Of_SameSeed_GivesTheSame()
    {
        var random = new SeededGenerator(3);
        var hits = new HitProbability([new TimingSession([.. Enumerable.Range(0, 300).Select(_ => 8 * random.NextDouble()).Order()])]);

        Assert.Equal(HitOptimism.Of(hits, [(2, 0), (2, 1)], 30, new SeededGenerator(7)), HitOptimism.Of(hits, [(2, 0), (2, 1)], 30, new SeededGenerator(7)));
    }
}
