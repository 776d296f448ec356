using System.Text.Json;
using System.Text.Json.Nodes;
using Tarry.Findings.Json;
using Tarry.Findings.Play;
using Tarry.Findings.Tests.Json;
using Tarry.Metrology;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Tests.Play;

public class PlayFindingsTests
{
    private static readonly PlaySettings Sharp = new([2, 8], [0, 4], false, false);

    // 4 or 16 ms by a fair coin against a constant 12 ms: the erratic one has the smaller mean and plays worse.
    [Fact]
    public void Play_CoinAgainstConstant_TheErraticOneHitsHalf()
    {
        var play = CoinAgainstConstant().Analyse(play: Sharp).Play!;
        var (steady, erratic) = (play.Conditions.Single(condition => condition.Id == "steady"), play.Conditions.Single(condition => condition.Id == "erratic"));

        Assert.Equal(1, Hits(steady.Windows[0]).Value.Value, 9);
        Assert.InRange(Hits(erratic.Windows[0]).Value.Value, 0.45, 0.51);
        Assert.True(Hits(erratic.Windows[0]).Interval.Contains(Proportion.FromFraction(0.5)));

        // +-8 ms hold both latencies.
        Assert.Equal(1, Hits(erratic.Windows[1]).Value.Value, 9);
        Assert.Equal(10, erratic.Windows[1].Compensation!.Value.Milliseconds, 6);
        Assert.Equal(12, steady.Learned!.Value.Milliseconds, 9);
        Assert.Equal(0, Error(steady), 9);
        Assert.Equal(6, Error(erratic), 9);
    }

    [Fact]
    public void Play_CoinAgainstConstant_RanksTheSteadyOneFirst()
    {
        var play = CoinAgainstConstant().Analyse(play: Sharp).Play!;
        var ranking = play.Rankings.Single(one => one is { PlayerSdMs: 0, WindowMs: 2 });
        var difference = play.Comparisons.Single(pair => pair is { PlayerSdMs: 0, WindowMs: 2 });

        Assert.Equal(["steady", "erratic"], ranking.Conditions.Select(condition => condition.Id));
        Assert.Equal([(1, 1), (2, 2)], ranking.Conditions.Select(condition => (condition.BestRank, condition.WorstRank)));
        Assert.True(difference.AdjustedP < 0.05);
        Assert.True(Assert.IsType<Estimate<ProportionDifference>>(difference.Difference).Interval.Contains(ProportionDifference.FromFraction(difference.A == "steady" ? 0.5 : -0.5)));

        // In the wide window both hit always: nothing is told.
        Assert.Equal(1, play.Comparisons.Single(pair => pair is { PlayerSdMs: 0, WindowMs: 8 }).AdjustedP!.Value, 9);
    }

    // N(0, 4) of the player alone: 2 Phi(w/4) - 1, and mean absolute error 4 sqrt(2/pi).
    [Fact]
    public void Play_ConstantLatency_LeavesThePlayersOwnError()
    {
        var steady = CoinAgainstConstant().Analyse(play: Sharp).Play!.Conditions.Single(condition => condition.Id == "steady");

        Assert.Equal((2 * NormalDistribution.Cdf(0.5)) - 1, Hits(steady.Windows[2]).Value.Value, 6);
        Assert.Equal((2 * NormalDistribution.Cdf(2)) - 1, Hits(steady.Windows[3]).Value.Value, 6);
        Assert.Equal(4 * Math.Sqrt(2 / Math.PI), steady.ErrorsWithPlayerMs[1], 9);
        Assert.Equal(Hits(steady.Windows[3]).Value.Value, CurveAt(steady.Curves[1], 8), 2);
    }

    [Fact]
    public void Play_Misses_CountAsNotHit()
    {
        var play = new SyntheticStudy(1)
            .AddSession("a", "lossy", [.. Enumerable.Repeat(5.0, 90)], missed: 10)
            .AddSession("b", "lossy", [.. Enumerable.Repeat(5.0, 90)], missed: 10)
            .Analyse(play: Sharp).Play!;

        Assert.Equal(0.9, Hits(play.Conditions.Single().Windows[0]).Value.Value, 9);
        Assert.Equal(200, Hits(play.Conditions.Single().Windows[0]).Trials);
    }

    [Fact]
    public void Play_OneSession_SaysThatItHoldsWithinThatSession()
    {
        var play = new SyntheticStudy(1).Add(1, ("ref", 5, 1), ("pad", 7, 8)).Analyse(play: Sharp).Play!;

        Assert.All(play.Conditions, condition => Assert.Equal(MethodName.HitsWithinSession, Hits(condition.Windows[0]).Method));
        Assert.All(play.Comparisons, pair => Assert.Null(pair.AdjustedP));
        Assert.All(play.Rankings.SelectMany(ranking => ranking.Conditions), ranked => Assert.Equal((1, 2), (ranked.BestRank, ranked.WorstRank)));
    }

    [Fact]
    public void Play_NoResponseAtAll_IsLeftOut()
    {
        var study = new SyntheticStudy(1).AddSession("a", "dead", [], missed: 30);
        Assert.Null(study.Analyse(play: Sharp).Play);

        var play = study.AddSession("a", "pad", [1, 2, 3]).Analyse(play: Sharp).Play!;
        Assert.Equal("pad", play.Conditions.Single().Id);
        Assert.IsType<NotEnough<LatencyDifference>>(play.Conditions.Single().DeviceError);
    }

    [Fact]
    public void Play_Defaults_AreFramesAndSaidToBeAssumed()
    {
        var settings = PlaySettings.Of(null);

        // 1, 2 and 4 frames of 1000/60 ms, half to either side.
        Assert.Equal([25.0 / 3, 50.0 / 3, 100.0 / 3], settings.WindowsMs.Select(window => Math.Round(window, 12)).ToArray(), Near);
        Assert.True(settings is { WindowsAreDefaults: true, PlayerSdsAreDefaults: true });
        Assert.Equal([1, 5], PlaySettings.Of(new([5, 1, 5], null)).WindowsMs);
    }

    [Fact]
    public void Play_AddedCondition_LeavesTheOthersResamplesAlone()
    {
        static double Share(SyntheticStudy study) => Hits(study.Analyse(play: Sharp).Play!.Conditions[0].Windows[0]).Value.Value;
        Assert.Equal(
            Share(new SyntheticStudy(3).Add(2, ("pad", 7, 8))),
            Share(new SyntheticStudy(3).Add(2, ("pad", 7, 8)).AddSession("s1", "other", [.. Enumerable.Repeat(9.0, 50)])));
    }

    [Fact]
    public void HitProbability_OverSittings_HoldsTheTruthAtTheStatedRate()
    {
        // The mass of U(0, 8) + U(0, 4.1) + N(0, .3) within 2 ms of its middle: the trapezoid's distribution function over the
        // normal, SciPy 1.10.1 integrate.quad.
        const double truth = 0.4982234;
        const int studies = 25;
        var settings = new PlaySettings([2], [0], false, false);
        var held = 0;
        for (var study = 0; study < studies; study++)
        {
            var play = new SyntheticStudy((ulong)(600 + study)) { Trials = 150 }.Add(3, ("a", 5, 8), ("b", 6, 8), ("c", 7, 8)).Analyse(play: settings).Play!;
            held += play.Conditions.Count(condition => Hits(condition.Windows[0]).Interval.Contains(Proportion.FromFraction(truth)));
        }

        // Three conditions a study from sittings of their own draws: 75 intervals, three binomial standard errors below .95.
        Assert.InRange(held / (3.0 * studies), 0.95 - (3 * Math.Sqrt(0.95 * 0.05 / (3 * studies))), 1);
    }

    [Fact]
    public void Json_OfPlay_FitsThePublishedSchemaAndHoldsEveryPair()
    {
        var document = new SyntheticStudy(1).Add(3, ("ref", 5, 1), ("pad", 7, 8), ("air", 9, 8)).Analyse(play: PlaySettings.Of(null));
        var node = JsonNode.Parse(FindingsJson.Write(document))!;

        FindingsJsonTests.AssertFits(document);
        Assert.Equal(3 * 6, node["play"]!["comparisons"]!.AsArray().Count);
        Assert.Equal(6, node["play"]!["rankings"]!.AsArray().Count);
        Assert.Equal(JsonValueKind.Null, JsonSerializer.SerializeToElement(node["play"]!["conditions"]![0]!["missing"]).ValueKind);
    }

    private static bool Near(double a, double b) => Math.Abs(a - b) < 1e-9;

    private static SyntheticStudy CoinAgainstConstant()
    {
        var study = new SyntheticStudy(1);
        foreach (var sitting in new[] { "a", "b", "c" })
        {
            study.AddSession(sitting, "steady", [.. Enumerable.Repeat(12.0, 400)]);
            study.AddSession(sitting, "erratic", [.. Enumerable.Range(0, 400).Select(press => press % 2 == 0 ? 4.0 : 16)]);
        }

        return study;
    }

    private static Estimate<Proportion> Hits(PlayWindow window) => Assert.IsType<Estimate<Proportion>>(window.HitProbability);

    private static double Error(PlayFinding condition) => Assert.IsType<Estimate<LatencyDifference>>(condition.DeviceError).Value.Milliseconds;

    private static double CurveAt(PlayCurve curve, double window) => curve.HitProbabilities[(int)Math.Round(window / curve.StepMs) - 1];
}
