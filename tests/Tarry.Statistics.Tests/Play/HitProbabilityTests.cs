using Tarry.Metrology;
using Tarry.Statistics.Distributions;
using Tarry.Statistics.Play;

namespace Tarry.Statistics.Tests.Play;

public class HitProbabilityTests
{
    // Latency 4 or 16 ms by a fair coin against a constant 12 ms.
    private static readonly HitProbability Coin = Of([.. Enumerable.Repeat(4.0, 500), .. Enumerable.Repeat(16.0, 500)]);
    private static readonly HitProbability Constant = Of([.. Enumerable.Repeat(12.0, 1000)]);

    [Theory]
    [InlineData(0.0, 0.5)]
    [InlineData(5.999, 0.5)]
    [InlineData(6.0, 1.0)]
    [InlineData(9.0, 1.0)]
    public void Best_CoinOfTwoLatencies_HitsHalfUntilTheWindowHoldsBoth(double window, double expected)
    {
        Close.Absolute(expected, Coin.Best(window, 0).Share, 1e-12);
        Close.Absolute(1.0, Constant.Best(window, 0).Share, 1e-12);
        Assert.Equal(12.0, Constant.Best(window, 0).Compensation);
    }

    [Fact]
    public void Best_CoinWithPlayer_FollowsTheNormalDistribution()
    {
        // Far apart for this player, one latency alone is best: half of erf.
        Close.Absolute(0.5 * ((2 * NormalDistribution.Cdf(4.0 / 2)) - 1), Coin.Best(4, 2).Share, 1e-4);

        // In the middle both are 6 ms off: the better choice for a wide window.
        Close.Absolute(NormalDistribution.Cdf((12.0 - 6) / 2) - NormalDistribution.Cdf((-12.0 - 6) / 2), Coin.Best(12, 2).Share, 1e-9);
        Close.Absolute((2 * NormalDistribution.Cdf(4.0 / 2)) - 1, Constant.Best(4, 2).Share, 1e-12);
    }

    [Fact]
    public void Best_TwentyApart_IsClosedAtTenMilliseconds()
    {
        var apart = Of([.. Enumerable.Repeat(0.0, 500), .. Enumerable.Repeat(20.0, 500)]);

        Close.Absolute(0.5, apart.Best(9.9, 0).Share, 1e-12);
        Close.Absolute(1.0, apart.Best(10, 0).Share, 1e-12);
        Assert.Equal(10.0, apart.Best(10, 0).Compensation);
    }

    // U(0, T): the fullest window holds 2w/T of it. In steps of T/n the count in a closed window is exact.
    [Theory]
    [InlineData(1.0)]
    [InlineData(2.0)]
    [InlineData(4.0)]
    public void Best_EvenGrid_HoldsTheWindowsShare(double window)
    {
        var grid = Of([.. Enumerable.Range(0, 8000).Select(i => i / 1000.0)]);

        Close.Absolute(Math.Min(1, ((2 * window) + 0.001) / 8), grid.Best(window, 0).Share, 1e-12);
    }

    // U(0, T) with a player: by symmetry the middle is best, and (1/T) times the integral of Phi((w - x)/s) - Phi((-w - x)/s)
    // over (-T/2, T/2) is (2s/T) [G((w + T/2)/s) - G((w - T/2)/s)] - 1 with G(z) = z Phi(z) + phi(z).
    [Theory]
    [InlineData(4.0, 2.0)]
    [InlineData(2.0, 5.0)]
    [InlineData(16.7, 5.0)]
    [InlineData(8.0, 0.5)]
    public void Best_EvenGridWithPlayer_AgreesWithTheClosedForm(double window, double s)
    {
        static double G(double z) => (z * NormalDistribution.Cdf(z)) + NormalDistribution.Density(z);
        var grid = Of([.. Enumerable.Range(0, 8000).Select(i => (i + 0.5) / 1000.0)]);
        var expected = (2 * s / 8 * (G((window + 4) / s) - G((window - 4) / s))) - 1;

        var best = grid.Best(window, s);

        Close.Absolute(expected, best.Share, 1e-7);
        Close.Absolute(4, best.Compensation, window == 8.0 ? 4 : 0.01);
        Close.Absolute(expected, grid.Curve([window], s).Single(), 1e-4);
    }

    [Fact]
    public void Best_NormalLatencies_AgreeWithTheSumOfBothVariances()
    {
        // Quantiles of N(20, 3) at even steps; with a player of sd 4 the error is N(0, 5).
        var normal = Of([.. Enumerable.Range(0, 20000).Select(i => 20 + (3 * NormalDistribution.Quantile((i + 0.5) / 20000)))]);

        Close.Absolute((2 * NormalDistribution.Cdf(6.0 / 5)) - 1, normal.Best(6, 4).Share, 1e-5);
        Close.Absolute(20, normal.Best(6, 4).Compensation, 0.01);
        Close.Absolute((2 * NormalDistribution.Cdf(6.0 / 3)) - 1, normal.Best(6, 0).Share, 2e-4);
    }

    [Fact]
    public void Best_Misses_NeverHit()
    {
        var lossy = new HitProbability([new TimingSession([5, 5, 5], missed: 1)]);

        Close.Absolute(0.75, lossy.Best(1, 0).Share, 1e-12);
        Close.Absolute(0.75 * ((2 * NormalDistribution.Cdf(0.5)) - 1), lossy.Best(1, 2).Share, 1e-12);
    }

    [Fact]
    public void Best_SessionsOfDifferentLength_WeighAlike()
    {
        var two = new HitProbability([new TimingSession([.. Enumerable.Repeat(1.0, 10)]), new TimingSession([.. Enumerable.Repeat(30.0, 990)])]);

        Close.Absolute(0.5, two.Best(5, 0).Share, 1e-12);
        Assert.Equal(15.5, two.Median);
    }

    [Fact]
    public void CompensationsAtLeast_Coin_AreAroundEitherLatency()
    {
        Assert.Equal([new(2, 6), new(14, 18)], Coin.CompensationsAtLeast(0.5, 2, 0));
        Assert.Equal([new(10, 10)], Coin.CompensationsAtLeast(1, 6, 0));
    }

    [Fact]
    public void CompensationsAtLeast_WithPlayer_EndWhereTheShareFalls()
    {
        var limits = Assert.Single(Constant.CompensationsAtLeast(0.8, 4, 2));

        foreach (var edge in new[] { limits.Low, limits.High })
        {
            Close.Absolute(0.8, Constant.At(edge, 4, 2).Single().Share, 1e-3);
        }

        Assert.Equal(24, limits.Low + limits.High, 0.05);
    }

    [Fact]
    public void Best_ShiftedLatencies_ShiftTheCompensationOnly()
    {
        var random = new SeededGenerator(5);
        double[] values = [.. Enumerable.Range(0, 400).Select(_ => 8 * random.NextDouble()).Order()];
        foreach (var s in new[] { 0.0, 0.5, 4 })
        {
            var (here, there) = (Of(values).Best(2, s), Of([.. values.Select(value => value + 100)]).Best(2, s));
            Close.Absolute(here.Share, there.Share, 1e-9);
            Close.Absolute(here.Compensation + 100, there.Compensation, 1e-3);
        }
    }

    [Fact]
    public void Best_AgainstSciPy_AgreesOnRandomLumps()
    {
        var random = new SeededGenerator(9);
        double[] values = [.. Enumerable.Range(0, 300).Select(_ => (random.NextInt32(2) * 20) + (4 * random.NextDouble())).Order()];
        var found = OutsideProgram.SciPy(
            """
            from scipy import optimize
            def v(c, w, s): return (stats.norm.cdf((w-(x-c))/s) - stats.norm.cdf((-w-(x-c))/s)).mean()
            for w, s in ((2, 1), (4, 2), (12, 3), (16.7, 10)):
              cs = np.arange(x.min()-1, x.max()+1, .05); c0 = cs[np.argmax([v(c, w, s) for c in cs])]
              r = optimize.minimize_scalar(lambda c: -v(c, w, s), bounds=(c0-.1, c0+.1), method='bounded', options=dict(xatol=1e-9))
              p(-r.fun)
            """,
            values);
        Assert.Equal(4, found.Length);
        foreach (var ((window, s), expected) in new[] { (2.0, 1.0), (4, 2), (12, 3), (16.7, 10) }.Zip(found))
        {
            Close.Absolute(expected, Of(values).Best(window, s).Share, 1e-9);
        }
    }

    [Fact]
    public void Best_PlayerFinerThanTheGrid_IsRefusedWithARemedy()
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => Coin.Best(4, 0.01));
        Assert.Contains("0.1 ms or more", refused.Message);
    }

    private static HitProbability Of(double[] sorted) => new([new TimingSession(sorted)]);
}
