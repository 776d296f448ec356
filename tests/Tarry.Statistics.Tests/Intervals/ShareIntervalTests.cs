using Tarry.Metrology;
using Tarry.Statistics.Intervals;

namespace Tarry.Statistics.Tests.Intervals;

public sealed class ShareIntervalTests
{
    // R 4.2.2: binom.test and prop.test(correct = FALSE); the first four are the examples of R. G. Newcombe,
    // Statist. Med. 17 (1998), equal to the four digits printed there.
    [Theory]
    [InlineData(81, 263, 0.252736746, 0.367621923, 0.255288520, 0.366209577)]
    [InlineData(15, 148, 0.0578440101, 0.161650490, 0.0623863995, 0.160487242)]
    [InlineData(0, 20, 0, 0.168433471, 0, 0.161125158)]
    [InlineData(1, 29, 0.000872646884, 0.177644295, 0.00611321429, 0.171755219)]
    [InlineData(7, 20, 0.153909205, 0.592188535, 0.181191824, 0.567145723)]
    [InlineData(1, 100, 0.000253146033, 0.0544593854, 0.00176743206, 0.0544861962)]
    [InlineData(0, 59, 0, 0.0606089, 0, 0.0611293705)]
    public void Of_ReferenceTable_Agrees(int count, int trials, double exactLow, double exactHigh, double scoreLow, double scoreHigh)
    {
        Close.Limits(exactLow, exactHigh, ClopperPearsonInterval.Of(count, trials), 1e-7);
        Close.Limits(scoreLow, scoreHigh, WilsonInterval.Of(count, trials), 1e-9);
    }

    // Closed form: 1 - .05^(1/2000), the "rule of three" made exact.
    [Fact]
    public void UpperLimit_NoneOfTwoThousand_IsTheClosedForm() =>
        Close.Relative(1 - Math.Pow(0.05, 1.0 / 2000), ClopperPearsonInterval.UpperLimit(0, 2000), 1e-12);

    [Fact]
    public void Of_AllAndNone_MirrorEachOther()
    {
        var none = ClopperPearsonInterval.Of(3, 50);
        var all = ClopperPearsonInterval.Of(47, 50);
        Close.Absolute(1 - none.High, all.Low, 1e-14);
        Close.Absolute(1 - none.Low, all.High, 1e-14);
        Assert.Equal(1, WilsonInterval.Of(50, 50).High);
    }

    [Fact]
    public void ClopperPearson_RandomCounts_AgreesWithR()
    {
        var generator = new SeededGenerator(8);
        var inputs = new double[120];
        for (var i = 0; i < inputs.Length; i += 2)
        {
            var trials = 1 + generator.NextInt32(i < 60 ? 100 : 1_000_000);
            inputs[i] = generator.NextInt32(i % 4 == 0 ? trials + 1 : 1 + (trials / 200));
            inputs[i + 1] = trials;
        }

        var expected = OutsideProgram.R("m <- matrix(x, 2); for (i in 1:ncol(m)) p(binom.test(m[1,i], m[2,i])$conf.int)", inputs);
        for (var i = 0; i < inputs.Length; i += 2)
        {
            var limits = ClopperPearsonInterval.Of((int)inputs[i], (int)inputs[i + 1]);
            Close.Relative(expected[i], limits.Low, 1e-9);
            Close.Relative(expected[i + 1], limits.High, 1e-9);
        }
    }

    [Fact]
    public void SessionShare_TwoSessionsAlike_IsExactOverAllTrials()
    {
        var share = SessionShareInterval.Of([6, 7], [3000, 3500]);
        Assert.False(share.SessionsDiffer);
        Assert.Equal(ClopperPearsonInterval.Of(13, 6500), share.Limits);
        Assert.Equal(0.002, share.Share);
    }

    [Fact]
    public void SessionShare_FourSessionsAlike_HoldsTheExactInterval()
    {
        var share = SessionShareInterval.Of([3, 4, 2, 3], [1500, 1500, 1500, 1500]);
        var exact = ClopperPearsonInterval.Of(12, 6000);
        Assert.False(share.SessionsDiffer);
        Assert.True(share.Limits.Low <= exact.Low && share.Limits.High >= exact.High);
    }

    // True rate 0.01; sessions alike, and sessions whose rate is a gamma variable of shape 3 (58 % apart). The exact
    // interval alone covers 0.60 of the second.
    [Theory]
    [InlineData(false, 0.985)]
    [InlineData(true, 0.95)]
    public void SessionShare_ManyStudies_Cover(bool different, double expected)
    {
        const int repetitions = 500;
        var generator = new SeededGenerator(97);
        var covered = 0;
        var counts = new int[4];
        for (var repetition = 0; repetition < repetitions; repetition++)
        {
            for (var j = 0; j < counts.Length; j++)
            {
                var gamma = -Math.Log((1 - generator.NextDouble()) * (1 - generator.NextDouble()) * (1 - generator.NextDouble())) / 3;
                counts[j] = 0;
                for (var trial = 0; trial < 1500; trial++)
                {
                    counts[j] += generator.NextDouble() < 0.01 * (different ? gamma : 1) ? 1 : 0;
                }
            }

            covered += SessionShareInterval.Of(counts, [1500, 1500, 1500, 1500]).Limits.Contains(0.01) ? 1 : 0;
        }

        Close.Share(expected, covered, repetitions, slack: 0.01);
    }

    [Fact]
    public void SessionShare_NothingMissed_StillHasAnUpperLimit()
    {
        var share = SessionShareInterval.Of([0, 0], [1000, 1000]);
        Assert.False(share.SessionsDiffer);
        Close.Relative(1 - Math.Pow(0.025, 1.0 / 2000), share.Limits.High, 1e-12);
    }

    // R: chisq.test(rbind(k, n - k))$p.value, and t.test(sqrt((k + 3/8)/n))$conf.int squared.
    [Fact]
    public void SessionShare_SessionsThatDiffer_AgreesWithR()
    {
        int[] counts = [2, 19, 6, 31];
        int[] trials = [1500, 1400, 1500, 1600];
        var expected = OutsideProgram.R("m <- matrix(x, 2, byrow=TRUE); k <- m[1,]; n <- m[2,]; c <- chisq.test(rbind(k, n-k)); p(c$statistic, c$p.value, t.test(sqrt((k+3/8)/n))$conf.int^2)", 2, 19, 6, 31, 1500, 1400, 1500, 1600);
        var share = SessionShareInterval.Of(counts, trials);
        Assert.True(share.SessionsDiffer);
        Close.Relative(expected[0], share.HeterogeneityStatistic, 1e-12);
        Close.Relative(expected[1], share.HeterogeneityP, 1e-9);
        var exact = ClopperPearsonInterval.Of(58, 6000);
        Close.Limits(Math.Min(expected[2], exact.Low), Math.Max(expected[3], exact.High), share.Limits, 1e-12);
        Assert.True(share.Limits.High > exact.High);
    }

    [Theory]
    [InlineData(-1, 5, "count is -1")]
    [InlineData(6, 5, "count is 6")]
    [InlineData(0, 0, "A share needs trials")]
    public void Of_ImpossibleCounts_SaysWhich(int count, int trials, string message)
    {
        Assert.Contains(message, Assert.Throws<ArgumentOutOfRangeException>(() => ClopperPearsonInterval.Of(count, trials)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => WilsonInterval.Of(count, trials));
        Assert.Throws<ArgumentOutOfRangeException>(() => SessionShareInterval.Of([count], [trials]));
    }
}
