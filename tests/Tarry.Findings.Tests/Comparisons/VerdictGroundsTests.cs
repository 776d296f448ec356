using Tarry.Findings.Comparisons;
using Tarry.Findings.Quality;
using Tarry.Findings.Tests.Simulation;

namespace Tarry.Findings.Tests.Comparisons;

public class VerdictGroundsTests
{
    [Theory]
    [InlineData(4, true)]
    [InlineData(3, true)]
    [InlineData(2, false)]
    [InlineData(0, false)]
    public void Verdict_IsRefusedWhereFewerThanTwoSittingsAreSound(int drifting, bool refused)
    {
        // The suspect is 30 ms slower than the reference and drifts by 6 ms where it is affected.
        var suspect = SimulatedDesigns.Suspect with { MeanMs = 40, Along = (trial, trials) => 6.0 * trial / trials, AffectedSittings = drifting };
        var document = SimulatedStudy.Analyse(SimulatedDesigns.WithOne(suspect, trials: 300, sittings: 4) with { KnowsPressTimes = false }, 11);
        var pair = document.Comparisons.Single(pair => pair.A == "c0" && pair.B == "suspect");
        Assert.Equal(refused, pair.IsRefused);
        Assert.Equal(refused, pair.Verdict == Verdict.Undecided);
        Assert.Equal(refused ? drifting : 0, pair.Refusal.Count);
        Assert.All(pair.Refusal, caution => Assert.Equal(CautionKind.Drift, caution.Kind));

        // What is refused decides no rank either.
        var rank = document.Ranking.Single(ranked => ranked.Id == "suspect");
        Assert.Equal(refused, rank is { BestRank: 1, WorstRank: 8 });
    }

    [Theory]
    [InlineData(0.0, false)]
    [InlineData(0.02, true)]
    public void FasterByLess_ThanItsLossMayHide_IsRefused(double loss, bool refused)
    {
        // Faster by 0.5 ms; the latest of 1,500 with a tail of mean 30 ms are beyond 100 ms: 2 % of them may add 2 ms.
        var suspect = SimulatedDesigns.Suspect with { MeanMs = 9.5, ReportMs = 1, MissedShare = loss, LateShare = 0.004, LateMeanMs = 30 };
        var design = SimulatedDesigns.WithOne(suspect, sittings: 4) with { OwnSdMs = 0.02, MarginMs = 0.05, KnowsPressTimes = false };
        var pair = SimulatedStudy.Analyse(design, 2).Comparisons.Single(pair => pair.A == "c0" && pair.B == "suspect");
        Assert.Equal(refused, pair.IsRefused);
        Assert.Equal(refused ? Verdict.Undecided : Verdict.Slower, pair.Verdict);
    }

    [Fact]
    public void SlowerInSpiteOfItsLoss_IsTold()
    {
        var suspect = SimulatedDesigns.Suspect with { MissedShare = 0.02 };
        var pair = SimulatedStudy.Analyse(SimulatedDesigns.WithOne(suspect, trials: 300) with { KnowsPressTimes = false }, 2).Comparisons.Single(pair => pair.A == "c0" && pair.B == "suspect");
        Assert.False(pair.IsRefused);
        Assert.Equal(Verdict.Faster, pair.Verdict);
    }

    [Fact]
    public void Swapped_SeesAllFromTheOtherSide()
    {
        var pair = SimulatedStudy.Analyse(SimulatedDesigns.Layer(1, 1, 3, 0.05, trials: 100), 3).Comparisons[^1];
        var other = pair.Swapped();
        Assert.Equal((pair.A, pair.B), (other.B, other.A));
        Assert.Equal((Verdict.Faster, Verdict.Slower), (pair.Verdict, other.Verdict));
        Assert.Equal(pair.Budget!.Correction.Milliseconds, -other.Budget!.Correction.Milliseconds);
        Assert.Equal(pair.Swapped().Swapped().Difference, pair.Difference);
    }
}
