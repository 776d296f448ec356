using Tarry.Metrology;
using Tarry.Statistics.Comparisons;

namespace Tarry.Statistics.Tests.Comparisons;

public sealed class RankSetsTests
{
    [Fact]
    public void Of_MeansFarApart_RanksEachSurely() =>
        Assert.Equal([new(3, 3), new(1, 1), new(2, 2)], RankSets.Of([9, 1, 5], (ReadOnlySpan<double>)[0.01, 0.01, 0.01], 20));

    [Fact]
    public void Of_MeansTooClose_TiesAll() =>
        Assert.Equal([new(1, 2), new(1, 2)], RankSets.Of([1, 1.1], (ReadOnlySpan<double>)[1, 1], 20));

    // R 4.2.2: TukeyHSD(aov(y ~ g)) of GEAR; the pairs whose interval excludes 0 decide.
    [Fact]
    public void Of_Gear_TellsThePairsThatTukeyHsdTells()
    {
        var expected = OutsideProgram.R("g <- gl(10, 10); h <- TukeyHSD(aov(x ~ g), conf.level = .80)$g; d <- matrix(0, 10, 10); d[lower.tri(d)] <- (h[,'lwr'] > 0) - (h[,'upr'] < 0); d <- d - t(d); p(rbind(1 + rowSums(d > 0), 10 - rowSums(d < 0)))", PublishedData.Gear);
        var means = new double[10];
        for (var batch = 0; batch < 10; batch++)
        {
            means[batch] = Statistics.Descriptives.Moments.Mean(PublishedData.Gear.AsSpan(10 * batch, 10));
        }

        // Mean square within, 3.526666667e-5 on 90 degrees of freedom (R, aov).
        var variances = Enumerable.Repeat(3.526666667e-5 / 10, 10).ToArray();
        var sets = RankSets.Of(means, variances, 90, 0.80);
        for (var batch = 0; batch < 10; batch++)
        {
            Assert.Equal(new RankSet((int)expected[2 * batch], (int)expected[(2 * batch) + 1]), sets[batch]);
        }

        Assert.Contains(sets, set => set.Best > 1);
    }

    // 12 conditions in four tied groups 0.4 apart: every set holds its true ranks in at least the level's share of studies.
    [Fact]
    public void Of_ManyStudies_HoldAllTrueRanks()
    {
        const int conditions = 12;
        const int repetitions = 400;
        var generator = new SeededGenerator(37);
        var (held, narrow) = (0, 0);
        var means = new double[conditions];
        var variances = new double[conditions];
        for (var repetition = 0; repetition < repetitions; repetition++)
        {
            var pooled = 0.0;
            for (var i = 0; i < 36; i++)
            {
                var z = generator.NextNormal();
                pooled += z * z / 36;
            }

            Array.Fill(variances, 0.01 * pooled);
            for (var i = 0; i < conditions; i++)
            {
                means[i] = (0.4 * (i / 3)) + (0.1 * generator.NextNormal());
            }

            var sets = RankSets.Of(means, variances, 36);
            var all = true;
            for (var i = 0; i < conditions; i++)
            {
                all &= sets[i].Best <= (3 * (i / 3)) + 1 && sets[i].Worst >= (3 * (i / 3)) + 3;
                narrow += sets[i].Worst - sets[i].Best < conditions - 1 ? 1 : 0;
            }

            held += all ? 1 : 0;
        }

        Assert.True(held >= repetitions * (0.95 - (4 * Math.Sqrt(0.05 * 0.95 / repetitions))), $"{held} of {repetitions}");
        Assert.True(narrow > repetitions * conditions / 2, "the sets say nothing");
    }

    [Fact]
    public void Of_Permuted_Permutes()
    {
        var sets = RankSets.Of([1, 2, 3], (ReadOnlySpan<double>)[0.05, 0.05, 0.2], 12);
        var swapped = RankSets.Of([3, 1, 2], (ReadOnlySpan<double>)[0.2, 0.05, 0.05], 12);
        Assert.Equal([sets[2], sets[0], sets[1]], swapped);
    }

    [Fact]
    public void Of_OneCondition_IsFirst() => Assert.Equal([new(1, 1)], RankSets.Of([4], (ReadOnlySpan<double>)[1], 3));

    // Mean 1 is told from mean 3 only; nothing compares 1 with 2.
    [Fact]
    public void Of_WhatIsTold_CountsTheToldOnly()
    {
        var differences = new MeanDifference?[3, 3];
        differences[0, 2] = new MeanDifference(-2, 0.1, 12);
        differences[1, 2] = new MeanDifference(-0.1, 0.1, 3);
        Assert.Equal([new(1, 2), new(1, 3), new(2, 3)], RankSets.Of(RankSets.Told(differences)));
    }
}
