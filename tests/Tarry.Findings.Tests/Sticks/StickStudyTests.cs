using System.Text.Json;
using Json.Schema;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Json;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Reshaping;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>Several sticks of one study: sessions as units, ranks, layers, and the document.</summary>
public class StickStudyTests
{
    private static readonly FaultyStick Stick = new() { RateHz = 250 };

    [Fact]
    public void Ranking_ByNoise_PutsTheQuietFirstAndTiesTheAlike()
    {
        var sticks = StickFindings.Of([], [.. Rests("quiet", 0.1, 10), .. Rests("alike", 0.1, 20), .. Rests("loud", 0.4, 30)])!;
        var ranking = sticks.Rankings.Single(one => one.Measure == StickMeasure.RestNoise && one.Part == StickPart.X);
        Assert.Equal(new RankedCondition("loud", 3, 3, 2), ranking.Places[^1]);
        Assert.All(ranking.Places.SkipLast(1), place => Assert.Equal((1, 2, 1), (place.BestRank, place.WorstRank, place.Group)));
        var pair = ranking.Pairs.Single(one => one is { A: "alike", B: "loud" } or { A: "loud", B: "alike" });
        Assert.True(pair.IsRatio);
        Assert.InRange(((StickEstimate)pair.Difference).Value, pair.A == "loud" ? 3.8 : 0.23, pair.A == "loud" ? 4.2 : 0.27);
        Assert.True(pair.AdjustedP < 0.001);
    }

    [Fact]
    public void Ranking_OfOneSessionEach_TellsNoneFromNone()
    {
        var sticks = StickFindings.Of([], [Stick.Rest(1, "a", seconds: 20), (Stick with { Noise = 1 }).Rest(2, "b", seconds: 20)])!;
        var ranking = sticks.Rankings.Single(one => one.Measure == StickMeasure.RestNoise && one.Part == StickPart.X);
        Assert.All(ranking.Places, place => Assert.Equal((1, 2), (place.BestRank, place.WorstRank)));
        Assert.IsType<StickRefusal>(ranking.Pairs.Single().Difference);
    }

    [Fact]
    public void Centre_OverSessionsThatDiffer_CoversTheirMean()
    {
        // Between sessions the centre scatters by 0.5; 95 of 100 studies of four sessions cover 0, fewer than 87 have a chance of 0.0006.
        var covered = Enumerable.Range(1, 100).Count(seed =>
        {
            var random = new Metrology.SeededGenerator((ulong)seed);
            var sessions = Enumerable.Range(0, 4).Select(sitting => (Stick with { OffsetX = 0.5 * random.NextNormal() }).Rest((ulong)((100 * seed) + sitting), "pad", $"s{sitting}", 4));
            var estimate = StickFindings.Of([], [.. sessions])!.Conditions[0].Estimate(StickMeasure.CentreOffset, StickPart.X)!;
            return estimate.Low <= 0 && estimate.High >= 0;
        });
        Assert.InRange(covered, 87, 100);
    }

    [Fact]
    public void Reshaping_BySquareDeadZoneAndCurve_IsRecognisedWithItsNumbers()
    {
        var layered = Stick with { DeadZone = 5, Exponent = 1.6 };
        var found = Layer(layered.Sweeps(3, condition: "with"), Stick.Sweeps(4, condition: "without"));
        Assert.Equal([ReshapingKind.DeadZone, ReshapingKind.Curve], found.Kinds);
        Covers(5, found.DeadZone, 1);
        Covers(1.6, found.Exponent, 0.05);
        Covers(100, found.Saturation, 1);

        var square = Layer((Stick with { SquareMapping = true, GateRadius = 95 }).Rim(5, condition: "with"), (Stick with { GateRadius = 95 }).Rim(6, condition: "without"));
        Assert.Equal([ReshapingKind.CircleToSquare], square.Kinds);
        Covers(100, square.Squareness, 1);
    }

    [Fact]
    public void Reshaping_ThatPullsTheDiagonalsIn_IsNoSquare()
    {
        var round = Stick.Rim(6, condition: "without");
        var (x, y) = (round.Samples.X.ToArray(), round.Samples.Y.ToArray());
        for (var index = 0; index < x.Length; index++)
        {
            var diagonal = 1 - (0.06 * Math.Pow(Math.Sin(2 * Math.Atan2(y[index], x[index])), 2));
            (x[index], y[index]) = (Math.Round(x[index] * diagonal), Math.Round(y[index] * diagonal));
        }

        var pulled = new StickSession(Stick.Rim(6, condition: "with").Record, new StickSamples(round.Samples.Ticks.ToArray(), x, y));
        var found = Layer(pulled, round);
        Assert.DoesNotContain(ReshapingKind.CircleToSquare, found.Kinds);
        Covers(-100 * 0.06 / (Math.Sqrt(2) - 1), found.Squareness, 1);
        Assert.DoesNotContain(StickFindings.Of([], [pulled])!.Conditions[0].Faults, fault => fault.Measure == StickMeasure.Squareness);
    }

    [Fact]
    public void Reshaping_ByADeadZoneThatIsCut_IsRecognisedBetweenTwoLevels()
    {
        var cut = Layer((Stick with { DeadZone = 8, DeadZoneIsStretched = false }).Sweeps(3, condition: "with"), Stick.Sweeps(4, condition: "without"));
        Assert.Equal([ReshapingKind.DeadZone], cut.Kinds);
        Covers(8, cut.DeadZone, 3.2);
    }

    [Fact]
    public void Reshaping_ByALayerThatChangesNothing_IsNotTold()
    {
        // At 5 % for the five tests together, more than 5 of 40 have a chance of 0.01.
        var told = Enumerable.Range(1, 40).Count(seed => Layer(Stick.Sweeps((ulong)seed, condition: "with"), Stick.Sweeps((ulong)(seed + 500), condition: "without")).Kinds.Count > 0);
        Assert.InRange(told, 0, 5);
    }

    [Fact]
    public void Json_OfSticks_HoldsToTheSchemaAndIsTheSameTwice()
    {
        var sessions = FaultlessStickTests.Everything(Stick with { OffsetX = 1 }, 8, 2, "with").Concat(FaultlessStickTests.Everything(Stick, 9, 2, "without")).ToList();
        var json = FindingsJson.Write(Document(StickFindings.Of(Conditions, sessions)));
        Assert.Equal(json, FindingsJson.Write(Document(StickFindings.Of(Conditions, sessions))));
        var schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "findings.schema.json")));
        using var parsed = JsonDocument.Parse(json);
        Assert.True(schema.Evaluate(parsed.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List }).IsValid);
        var measure = parsed.RootElement.GetProperty("sticks").GetProperty("conditions")[1].GetProperty("measures").GetProperty("centre_offset_x_percent");
        Assert.InRange(measure.GetProperty("value").GetDouble(), 0.99, 1.01);
    }

    private static IReadOnlyList<ConditionEntry> Conditions =>
    [
        new ConditionEntry { Id = "without", Factors = new Dictionary<string, string> { ["device"] = "Quill 2", ["layer"] = "none" } },
        new ConditionEntry { Id = "with", Factors = new Dictionary<string, string> { ["device"] = "Quill 2", ["layer"] = "remapper" } },
    ];

    private static StickSession[] Rests(string condition, double noise, ulong seed) =>
        [.. Enumerable.Range(0, 3).Select(sitting => (Stick with { Noise = noise }).Rest(seed + (ulong)sitting, condition, $"s{sitting}", 20))];

    private static ReshapingFinding Layer(StickSession with, StickSession without) => StickFindings.Of(Conditions, [with, without])!.Reshapings.Single();

    private static void Covers(double truth, StickOutcome outcome, double widest)
    {
        var estimate = Assert.IsType<StickEstimate>(outcome);
        Assert.True(estimate.Low <= truth && truth <= estimate.High, $"{truth} is not in {estimate.Low} to {estimate.High}");
        Assert.InRange(estimate.High - estimate.Low, 0, 2 * widest);
    }

    private static FindingsDocument Document(StudySticks? sticks) => new()
    {
        Title = "Sticks",
        Reference = null,
        MarginMs = 0.5,
        Seed = 1,
        Version = "test",
        Counts = new SessionCounts(0, 0, 0, 0, 0),
        Conditions = [],
        Comparisons = [],
        Ranking = [],
        Cautions = [],
        Sticks = sticks,
    };
}
