using Tarry.Findings.Comparisons;
using Tarry.Findings.Quality;
using Tarry.Metrology;

namespace Tarry.Findings.Tests.Conditions;

public class ConditionFindingTests
{
    [Fact]
    public void Mean_OverSittings_IsTheUnweightedMeanOfSessionMeans()
    {
        // Session means 1.5 and 4, although the second session has fewer trials.
        var document = new SyntheticStudy(1)
            .AddSession("a", "pad", [1, 2, 1, 2])
            .AddSession("b", "pad", [4, 4])
            .Analyse();
        var mean = Assert.IsType<Estimate<Latency>>(document.Conditions[0].Mean);
        Assert.Equal(2.75, mean.Value.Milliseconds, 12);
        Assert.Equal(2, mean.Sessions);
        Assert.Equal(6, mean.Trials);

        // One condition has nothing to borrow: t(1) = 12.706 (NIST TN 1297 Table B.1) times sd/sqrt(2) = 1.25.
        Assert.Equal(12.70620473617 * 1.25, mean.Interval.High.Milliseconds - mean.Value.Milliseconds, 8);
    }

    [Fact]
    public void Mean_OfOneSession_SaysThatItIsWithinThatSession()
    {
        var study = new SyntheticStudy(2);
        var document = study.AddSession("a", "pad", study.Draw(5, 8)).Analyse();
        var mean = Assert.IsType<Estimate<Latency>>(document.Conditions[0].Mean);
        Assert.Equal(MethodName.BatchMeansWithinSession, mean.Method);
        Assert.Equal(1, mean.Sessions);
        Assert.Contains(document.Conditions[0].Cautions, caution => caution.Kind == CautionKind.OneSitting);
    }

    [Fact]
    public void Mean_OfTenResponses_IsNotEnough()
    {
        var document = new SyntheticStudy(3).AddSession("a", "pad", [1, 2, 3, 4, 5, 6, 7, 8, 9, 10]).Analyse();
        var condition = document.Conditions[0];
        Assert.Equal(10, Assert.IsType<NotEnough<Latency>>(condition.Mean).Have);

        // Smallest n with both limits finite: 72 for p95, 368 for p99 (order-statistic tables; recomputed with R's qbinom).
        Assert.Equal(72, Assert.IsType<NotEnough<Latency>>(condition.P95).Need);
        Assert.Equal(368, Assert.IsType<NotEnough<Latency>>(condition.P99).Need);
    }

    [Fact]
    public void Quantiles_CountMissesAsLaterThanAnyResponse()
    {
        // 97 responses of 1..97 ms and 3 misses: of 100 presses the median lies between the 50th and the 51st.
        var document = new SyntheticStudy(4).AddSession("a", "pad", [.. Enumerable.Range(1, 97).Select(i => (double)i)], missed: 3).Analyse();
        var condition = document.Conditions[0];
        Assert.Equal(50.5, Assert.IsType<Estimate<Latency>>(condition.Median).Value.Milliseconds, 12);
        Assert.Equal(49, Assert.IsType<Estimate<Latency>>(new SyntheticStudy(4)
            .AddSession("a", "pad", [.. Enumerable.Range(1, 97).Select(i => (double)i)])
            .Analyse().Conditions[0].Median).Value.Milliseconds, 12);
        Assert.Equal(3, condition.Counts.Missed);
        Assert.Equal(0.03, Assert.IsType<Estimate<Proportion>>(condition.MissedShare).Value.Value, 12);
    }

    [Fact]
    public void Relative_InOneSitting_DecidesNothing()
    {
        var study = new SyntheticStudy(5);
        var document = study.AddSession("a", "ref", study.Draw(5, 1)).AddSession("a", "pad", study.Draw(9, 1)).Analyse();
        var pair = Assert.Single(document.Comparisons);
        Assert.Equal(Verdict.Undecided, pair.Verdict);
        Assert.Null(pair.AdjustedP);
        Assert.Equal(MethodName.DifferenceWithinSession, Assert.IsType<Estimate<LatencyDifference>>(pair.Difference).Method);
    }

    [Fact]
    public void Relative_ToTheReference_IsTheComparisonTurnedRound()
    {
        var document = new SyntheticStudy(6).Add(3, ("ref", 5, 1), ("pad", 7, 1)).Analyse();
        var pair = Assert.IsType<Estimate<LatencyDifference>>(Assert.Single(document.Comparisons).Difference);
        var relative = Assert.IsType<Estimate<LatencyDifference>>(document.Conditions[1].Relative);
        Assert.True(relative.Value.Milliseconds > 0, "the pad is slower");
        Assert.Equal(-pair.Value.Milliseconds, relative.Value.Milliseconds, 12);
        Assert.Equal(-pair.Interval.High.Milliseconds, relative.Interval.Low.Milliseconds, 12);
        Assert.Null(document.Conditions[0].Relative);
    }

    [Fact]
    public void Relative_OfConditionsThatShareNoSitting_ComparesBetweenSittings()
    {
        var study = new SyntheticStudy(7) { SharedSd = 0, OwnSd = 0.05 };
        var document = study
            .AddSession("a", "ref", study.Draw(5, 1)).AddSession("b", "ref", study.Draw(5, 1)).AddSession("c", "ref", study.Draw(5, 1))
            .AddSession("d", "pad", study.Draw(9, 1)).AddSession("e", "pad", study.Draw(9, 1)).AddSession("f", "pad", study.Draw(9, 1))
            .Analyse();
        var difference = Assert.IsType<Estimate<LatencyDifference>>(document.Comparisons[0].Difference);
        Assert.Equal(MethodName.ModeratedUnpaired, difference.Method);
        Assert.True(difference.Interval.Contains(LatencyDifference.FromMilliseconds(-4)), difference.ToString());
    }

    [Fact]
    public void Ranking_OfPlainlyDifferentConditions_HasNoTies()
    {
        var document = new SyntheticStudy(8).Add(4, ("ref", 5, 1), ("mid", 8, 1), ("late", 12, 1)).Analyse();
        Assert.Equal(["ref", "mid", "late"], document.Ranking.Select(ranked => ranked.Id));
        Assert.Equal([1, 2, 3], document.Ranking.Select(ranked => ranked.BestRank));
        Assert.Equal([1, 2, 3], document.Ranking.Select(ranked => ranked.WorstRank));
        Assert.Equal([1, 2, 3], document.Ranking.Select(ranked => ranked.Group));
    }

    [Fact]
    public void Counts_OfAStudyWithoutData_AreZero()
    {
        var document = new SyntheticStudy(9).Analyse();
        Assert.Empty(document.Conditions);
        Assert.Empty(document.Ranking);
        Assert.Equal(0, document.Counts.Captured);
    }

    [Theory]
    [InlineData(300)]
    [InlineData(5_000)]
    [InlineData(1_000_000)]
    public void Density_WithOneResponseThatCameFarTooLate_HoldsAllTheOthers(double lateMs)
    {
        var study = new SyntheticStudy(10);
        var curve = study.AddSession("a", "pad", [.. study.Draw(5, 1), lateMs]).Analyse().Conditions[0].Density!;
        Assert.Equal(1, curve.StepMs * curve.PerMs.Sum(), 0.01);
        Assert.Equal(240 / 241.0, curve.StepMs * curve.PerMs.TakeWhile((_, index) => curve.FromMs + (index * curve.StepMs) < lateMs / 2).Sum(), 0.01);
    }
}
