using Tarry.Metrology;
using Tarry.Statistics.Drift;

namespace Tarry.Statistics.Tests.Drift;

public sealed class DependenceTests
{
    // R 4.2.2: Box.test(x, lag, type = "Ljung-Box")$statistic of NIST Lew.
    [Theory]
    [InlineData(5, 429.889292504653)]
    [InlineData(20, 1460.15496681894)]
    public void LjungBox_Lew_AgreesWithR(int lags, double expected) =>
        Close.Relative(expected, LjungBox.Test(PublishedData.Lew, lags).Statistic, 1e-12);

    // R's own data set lh: Q at lags 1, 5, 10 are 16.913791758, 22.6731850021, 25.3509303605.
    [Fact]
    public void LjungBox_HormoneSeries_AgreesWithR()
    {
        var series = OutsideProgram.R("p(lh)");
        double[] statistics = [16.913791758, 22.6731850021, 25.3509303605];
        double[] probabilities = [3.91163e-5, 3.89745e-4, 4.71856e-3];
        int[] lags = [1, 5, 10];
        for (var i = 0; i < lags.Length; i++)
        {
            var test = LjungBox.Test(series, lags[i]);
            Close.Relative(statistics[i], test.Statistic, 1e-11);
            Close.Relative(probabilities[i], test.P, 2e-6);
        }
    }

    [Fact]
    public void LjungBox_RandomSeries_AgreesWithR()
    {
        var values = Series(new SeededGenerator(41), 1500, 0.05);
        var expected = OutsideProgram.R("b <- Box.test(x, 20, 'Ljung-Box'); p(b$statistic, b$p.value)", values);
        var test = LjungBox.Test(values);
        Close.Relative(expected[0], test.Statistic, 1e-10);
        Close.Relative(expected[1], test.P, 1e-9);
    }

    // R: anova(lm(x ~ gl(20, 75))), the two-sided p from its F.
    [Fact]
    public void BatchVariance_RandomSeries_AgreesWithR()
    {
        var values = Series(new SeededGenerator(43), 1500, 0.02);
        var expected = OutsideProgram.R("f <- anova(lm(x ~ gl(20, 75)))[1,'F value']; p(f, 2*min(pf(f, 19, 1480), pf(f, 19, 1480, lower=FALSE)))", values);
        var test = BatchVarianceTest.Of(values);
        Close.Relative(expected[0], test.Statistic, 1e-9);
        Close.Relative(expected[1], test.P, 1e-8);
    }

    // The same series of values, arranged so that every batch holds the same ones: too alike to be independent.
    [Fact]
    public void BatchVariance_Lattice_IsFlaggedAsTooAlike()
    {
        var values = new double[1000];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = i * 7 % 50;
        }

        Assert.True(BatchVarianceTest.Of(values).P < 1e-6);
    }

    [Fact]
    public void Tests_IndependentSessions_RejectAtTheirLevel()
    {
        const int repetitions = 1000;
        var generator = new SeededGenerator(47);
        var (batch, portmanteau) = (0, 0);
        for (var repetition = 0; repetition < repetitions; repetition++)
        {
            var values = Series(generator, 500, 0);
            batch += BatchVarianceTest.Of(values).P < 0.05 ? 1 : 0;
            portmanteau += LjungBox.Test(values).P < 0.05 ? 1 : 0;
        }

        Close.Share(0.05, batch, repetitions);
        Close.Share(0.05, portmanteau, repetitions, slack: 0.01);
    }

    [Fact]
    public void Tests_ConstantSession_HaveNothingToReject()
    {
        Assert.Equal(1, BatchVarianceTest.Of(new double[100]).P);
        Assert.Equal(1, LjungBox.Test(new double[100]).P);
        Assert.Equal(1, RankCusum.Test(new double[100]).P);
        Assert.Equal(100, EffectiveSampleSize.Of(new double[100]));
    }

    // A first-order autoregression of coefficient r is worth n (1 - r)/(1 + r) trials.
    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(0.8)]
    public void EffectiveSampleSize_Autoregression_IsTheKnownShare(double correlation)
    {
        const int n = 50_000;
        var expected = n * (1 - correlation) / (1 + correlation);
        Close.Relative(expected, EffectiveSampleSize.Of(Series(new SeededGenerator(53), n, correlation)), 0.12);
    }

    [Fact]
    public void EffectiveSampleSize_RandomSeries_AgreesWithADirectSum()
    {
        var values = Series(new SeededGenerator(59), 701, 0.4);
        var expected = OutsideProgram.SciPy(
            """
            n = x.size; y = x - x.mean(); rho = np.array([y[k:] @ y[:n-k] for k in range(n)]) / (y @ y)
            s, prev = 0.0, np.inf
            for k in range(n // 2):
              g = rho[2*k] + rho[2*k+1]
              if g <= 0: break
              prev = min(g, prev); s += prev
            p(n / (2*s - 1))
            """,
            values);
        Close.Relative(expected[0], EffectiveSampleSize.Of(values), 1e-10);
    }

    [Fact]
    public void EffectiveSampleSize_TrialsThatBalance_IsAtMostTheTrials() =>
        Assert.Equal(200, EffectiveSampleSize.Of(PublishedData.Lew));

    private static double[] Series(SeededGenerator generator, int count, double correlation)
    {
        var values = new double[count];
        var previous = generator.NextNormal();
        for (var i = 0; i < count; i++)
        {
            previous = (correlation * previous) + (Math.Sqrt(1 - (correlation * correlation)) * generator.NextNormal());
            values[i] = previous;
        }

        return values;
    }

    // The plain statistic's tail is ruined by a rare late lump; on ranks it keeps its level.
    [Fact]
    public void LjungBoxOnRanks_OfIndependentTrialsWithALateLump_KeepsItsLevel()
    {
        var generator = new SeededGenerator(83);
        var (plain, onRanks) = (0, 0);
        const int repetitions = 600;
        for (var repetition = 0; repetition < repetitions; repetition++)
        {
            var values = new double[600];
            for (var i = 0; i < values.Length; i++)
            {
                values[i] = (2 * generator.NextDouble()) + (4.1 * generator.NextDouble()) + (generator.NextDouble() < 0.002 ? 40 : 0);
            }

            plain += LjungBox.Test(values).P < 0.001 ? 1 : 0;
            onRanks += LjungBox.TestRanks(values).P < 0.001 ? 1 : 0;
        }

        Assert.True(plain > 6, $"the plain test rejected {plain} of {repetitions} at 0.001");
        Assert.True(onRanks <= 6, $"the test on ranks rejected {onRanks} of {repetitions} at 0.001");
    }

    [Fact]
    public void LjungBoxOnRanks_OfAnAutoregression_Tells()
    {
        var generator = new SeededGenerator(89);
        var values = new double[600];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = (i > 0 ? 0.4 * values[i - 1] : 0) + generator.NextNormal();
        }

        Assert.True(LjungBox.TestRanks(values).P < 1e-6);
    }
}
