using Tarry.Metrology;
using Tarry.Statistics.Quantiles;

namespace Tarry.Statistics.Tests.Quantiles;

public sealed class OrderStatisticIntervalTests
{
    // R 4.2.2: l = qbinom(.025, n, p), u = qbinom(.975, n, p) + 1, coverage = pbinom(u-1, n, p) - pbinom(l-1, n, p).
    [Theory]
    [InlineData(10, 0.5, 2, 9, 0.97851563)]
    [InlineData(20, 0.5, 6, 15, 0.95861053)]
    [InlineData(30, 0.5, 10, 21, 0.95722605)]
    [InlineData(50, 0.5, 18, 33, 0.96716086)]
    [InlineData(100, 0.5, 40, 61, 0.9647998)]
    [InlineData(200, 0.5, 86, 115, 0.9599628)]
    [InlineData(300, 0.5, 133, 168, 0.95687150)]
    [InlineData(500, 0.5, 228, 273, 0.95593653)]
    [InlineData(1000, 0.5, 469, 532, 0.9537088)]
    [InlineData(50, 0.9, 41, 50, 0.97030829)]
    [InlineData(100, 0.9, 84, 96, 0.95569011)]
    [InlineData(200, 0.9, 171, 189, 0.96688390)]
    [InlineData(300, 0.9, 259, 281, 0.96624266)]
    [InlineData(500, 0.9, 436, 464, 0.96339530)]
    [InlineData(1000, 0.9, 881, 919, 0.9549072)]
    [InlineData(100, 0.95, 90, 100, 0.9826071)]
    [InlineData(200, 0.95, 184, 197, 0.9671522)]
    [InlineData(300, 0.95, 277, 293, 0.96718792)]
    [InlineData(500, 0.95, 465, 485, 0.96049874)]
    [InlineData(1000, 0.95, 936, 964, 0.9580953)]
    [InlineData(500, 0.99, 490, 500, 0.9801859)]
    [InlineData(1000, 0.99, 983, 997, 0.9760948)]
    public void Ranks_ReferenceTable_Agrees(int trials, double level, int lower, int upper, double coverage)
    {
        var ranks = OrderStatisticInterval.Ranks(trials, level);
        Assert.Equal((lower, upper), (ranks.Lower, ranks.Upper));
        Assert.True(ranks.FiniteLower && ranks.FiniteUpper);
        Close.Absolute(coverage, ranks.Coverage, 6e-8);
    }

    // The empty cells of the same table: the upper rank is n + 1.
    [Theory]
    [InlineData(30, 0.9)]
    [InlineData(50, 0.95)]
    [InlineData(300, 0.99)]
    public void Ranks_TooFewTrials_HaveNoUpperLimit(int trials, double level)
    {
        var ranks = OrderStatisticInterval.Ranks(trials, level);
        Assert.False(ranks.FiniteUpper);
        Assert.Equal(trials + 1, ranks.Upper);
    }

    // R, as above: smallest n with both limits.
    [Theory]
    [InlineData(0.5, 6)]
    [InlineData(0.9, 36)]
    [InlineData(0.1, 36)]
    [InlineData(0.95, 72)]
    [InlineData(0.99, 368)]
    [InlineData(0.999, 3688)]
    public void SmallestCount_ReferenceLevels_IsTheFirstWithBothLimits(double level, int expected)
    {
        Assert.Equal(expected, OrderStatisticInterval.SmallestCount(level));
        var (enough, tooFew) = (OrderStatisticInterval.Ranks(expected, level), OrderStatisticInterval.Ranks(expected - 1, level));
        Assert.True(enough.FiniteLower && enough.FiniteUpper);
        Assert.False(tooFew.FiniteLower && tooFew.FiniteUpper);
    }

    // ISO 16269-6 and Wilks (from memory), recomputed in R: one-sided tolerance counts.
    [Theory]
    [InlineData(0.90, 0.90, 22)]
    [InlineData(0.90, 0.95, 29)]
    [InlineData(0.90, 0.99, 44)]
    [InlineData(0.95, 0.90, 45)]
    [InlineData(0.95, 0.95, 59)]
    [InlineData(0.95, 0.99, 90)]
    [InlineData(0.99, 0.90, 230)]
    [InlineData(0.99, 0.95, 299)]
    [InlineData(0.99, 0.99, 459)]
    [InlineData(0.999, 0.95, 2995)]
    public void OneSidedSmallestCount_WilksTable_Agrees(double level, double confidence, int expected) =>
        Assert.Equal(expected, OrderStatisticInterval.OneSidedSmallestCount(level, confidence));

    // R: qbinom(.95, n, p) + 1.
    [Theory]
    [InlineData(0.95, 59, 59)]
    [InlineData(0.95, 93, 92)]
    [InlineData(0.95, 100, 99)]
    [InlineData(0.95, 200, 196)]
    [InlineData(0.95, 300, 292)]
    [InlineData(0.95, 1000, 962)]
    [InlineData(0.99, 299, 299)]
    [InlineData(0.99, 500, 499)]
    [InlineData(0.99, 1000, 996)]
    [InlineData(0.99, 298, 299)]
    public void OneSidedUpperRank_ReferenceTable_Agrees(double level, int trials, int expected) =>
        Assert.Equal(expected, OrderStatisticInterval.OneSidedUpperRank(trials, level));

    // R, the ranks above applied to the data.
    [Fact]
    public void Of_PublishedData_GivesTheReferenceLimits()
    {
        var sleep = OrderStatisticInterval.Of(PublishedData.Sorted(PublishedData.Sleep), 0.5);
        Assert.Equal((0.0, 3.4), (sleep.Low, sleep.High));
        var median = OrderStatisticInterval.Of(PublishedData.Sorted(PublishedData.Michelson), 0.5);
        Assert.Equal((840.0, 870.0), (median.Low, median.High));
        var p95 = OrderStatisticInterval.Of(PublishedData.Sorted(PublishedData.Michelson), 0.95);
        Assert.Equal((960.0, 1070.0), (p95.Low, p95.High));
    }

    // 100 trials of which 5 missed: the ranks of p95 are 90 and 100, so the upper limit is a miss.
    [Fact]
    public void Of_WithMisses_HasNoUpperLimitAmongThem()
    {
        var sorted = Enumerable.Range(1, 95).Select(v => (double)v).ToArray();
        var limits = OrderStatisticInterval.Of(sorted, 0.95, missed: 5);
        Assert.Equal(90, limits.Low);
        Assert.Null(limits.High);
        Assert.True(limits.Ranks.FiniteUpper);
    }

    [Fact]
    public void Of_CoarseTicks_SaysTied()
    {
        var limits = OrderStatisticInterval.Of(Enumerable.Repeat(4.0, 100).ToArray(), 0.5);
        Assert.True(limits.Tied);
    }

    [Theory]
    [InlineData(0.5, 40)]
    [InlineData(0.95, 500)]
    [InlineData(0.99, 500)]
    public void Of_ManySamples_CoversAsOftenAsItSays(double level, int trials)
    {
        const int repetitions = 1000;
        var generator = new SeededGenerator(17);
        var values = new double[trials];
        var covered = 0;
        for (var repetition = 0; repetition < repetitions; repetition++)
        {
            for (var i = 0; i < trials; i++)
            {
                values[i] = generator.NextDouble();
            }

            Array.Sort(values);
            var limits = OrderStatisticInterval.Of(values, level);
            covered += limits.Low <= level && level <= limits.High ? 1 : 0;
        }

        Close.Share(OrderStatisticInterval.Ranks(trials, level).Coverage, covered, repetitions);
    }

    [Fact]
    public void Ranks_AMillionTrials_AgreeWithSciPy()
    {
        var expected = OutsideProgram.SciPy("p([[stats.binom.ppf(.025, 1000000, q), stats.binom.ppf(.975, 1000000, q) + 1] for q in (.05, .5, .95, .99, .999)])");
        var i = 0;
        foreach (var level in (double[])[0.05, 0.5, 0.95, 0.99, 0.999])
        {
            var ranks = OrderStatisticInterval.Ranks(1_000_000, level);
            Assert.Equal((expected[i++], expected[i++]), (ranks.Lower, ranks.Upper));
        }
    }
}
