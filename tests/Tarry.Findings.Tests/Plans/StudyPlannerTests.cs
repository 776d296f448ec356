using Json.Schema;
using System.Text.Json;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Json;
using Tarry.Findings.Plans;
using Tarry.Statistics.Planning;

namespace Tarry.Findings.Tests.Plans;

public class StudyPlannerTests
{
    private static readonly string[] Four = ["ref", "a", "b", "c"];

    // methods: s_b .2, s_w 2.6, 80 % assurance, a condition alone (R 4.2.2, qt and qchisq): H = .5 takes 4 sittings of 284
    // trials, H = .2 takes 9 of 743.
    [Theory]
    [InlineData(0.5, 4, 284)]
    [InlineData(0.2, 9, 743)]
    public void Of_OneConditionAlone_NeedsWhatTheFormulaSays(double halfWidth, int sittings, int trials)
    {
        var plan = Planned(["pad"], new PlanRequest { Kind = PlanGoalKind.HalfWidth, Ms = halfWidth, SessionSdMs = 0.2, TrialSdMs = 2.6 });

        Assert.Equal(trials, plan.Alternatives.Single(one => one.Sittings == sittings).TrialsPerSession);
    }

    [Fact]
    public void Of_Difference_HasThePowerThatItPromises()
    {
        var plan = Planned(Four, new PlanRequest { Kind = PlanGoalKind.Difference, Ms = 0.5, SessionSdMs = 0.2, TrialSdMs = 2.6 });

        Assert.Equal(1 - (0.05 / 6), plan.Goal.Level, 12);
        foreach (var one in plan.Alternatives.Where(one => one.TrialsPerSession > StudyPlanner.FewestTrials))
        {
            double Power(int trials) => TestPower.ToTell(0.5, Math.Sqrt(2 * (0.04 + (2.6 * 2.6 / trials)) / one.Sittings), 3 * (one.Sittings - 1), plan.Goal.Level);
            Assert.InRange(Power(one.TrialsPerSession!.Value), 0.8, 1);
            Assert.InRange(Power(one.TrialsPerSession.Value - 1), 0, 0.8);
        }
    }

    [Fact]
    public void Of_Equivalence_HasThePowerThatItPromises()
    {
        var plan = Planned(Four, new PlanRequest { Kind = PlanGoalKind.Equivalence, Ms = 0.4, SessionSdMs = 0.2, TrialSdMs = 2.6, Assurance = 0.9 });
        var one = plan.Advised!;

        var error = Math.Sqrt(2 * (0.04 + (2.6 * 2.6 / one.TrialsPerSession!.Value)) / one.Sittings);
        Assert.InRange(TestPower.ToShowEquivalent(0, -0.4, 0.4, error, 3 * (one.Sittings - 1)), 0.9, 0.92);
    }

    [Fact]
    public void Of_SessionsThatScatterTooMuch_SaysThatPressesCannotHelp()
    {
        var plan = Planned(Four, new PlanRequest { Kind = PlanGoalKind.Difference, Ms = 0.1, SessionSdMs = 2, TrialSdMs = 2.6 });

        Assert.Null(plan.Advised);
        Assert.All(plan.Alternatives, one => Assert.True(one is { TrialsPerSession: null, Presses: null, Hours: null, EndlessPressesMs: > 0.1 }));
    }

    [Fact]
    public void Of_Advice_IsTheCheapestFromThreeSittingsOn()
    {
        var plan = Planned(Four, new PlanRequest { Kind = PlanGoalKind.Difference, Ms = 0.5 });
        var able = plan.Alternatives.Where(one => one is { Hours: not null, Sittings: >= 3 }).ToList();

        Assert.Equal(able.Min(one => one.Hours), plan.Advised!.Hours);
        Assert.Equal((long)plan.Advised.Sittings * plan.Advised.TrialsPerSession * 4, plan.Advised.Presses);

        // 30 min a sitting, 5 min and n presses of 0.095 s a condition.
        var minutes = plan.Advised.Sittings * (30 + (4 * (5 + (plan.Advised.TrialsPerSession!.Value * 0.095 / 60))));
        Assert.Equal(minutes / 60, plan.Advised.Hours!.Value, 9);
    }

    [Fact]
    public void Of_StudyWithoutData_SaysWhatIsAssumed()
    {
        var plan = Planned(Four, new PlanRequest { Kind = PlanGoalKind.Difference, TrialSdMs = 3 });

        Assert.Equal((VarianceSource.Default, VarianceSource.Stated, 0), (plan.Variances.SessionSdSource, plan.Variances.TrialSdSource, plan.Variances.Sessions));
        Assert.Equal(0.5, plan.Goal.Ms);
    }

    // Truth of the synthetic bench: shared .2, own .1, trials sqrt((8^2 + 4.1^2)/12 + .3^2) or with 1 ms instead of 8.
    [Fact]
    public void Of_StudyWithData_MeasuresTheScatter()
    {
        var document = new SyntheticStudy(5) { Trials = 400 }.Add(40, ("ref", 5, 1), ("a", 6, 8), ("b", 7, 8), ("c", 8, 8)).Analyse();
        var variances = StudyPlanner.Of(document, Four, new PlanRequest { Kind = PlanGoalKind.Difference }).Variances;

        // Standard errors of the sds: .2236/sqrt(2 x 39) for what 40 sittings share, .1/sqrt(2 x 117) for the rest and its trials.
        Assert.InRange(variances.SessionSdMs, 0.2236 - 0.08, 0.2236 + 0.08);
        Assert.InRange(variances.OwnSessionSdMs, 0.07, 0.13);
        var trial = Math.Sqrt(((3 * 64) + 1 + (4 * 4.1 * 4.1)) / 48 + 0.09);
        Assert.InRange(variances.TrialSdMs, trial - 0.03, trial + 0.03);
        Assert.InRange(variances.Sessions, 140, 160);
    }

    // What an undecided pair is told it needs rests on t + t for the power, the plan on the noncentral t: one sitting apart at most.
    [Fact]
    public void Of_Difference_AgreesWithWhatAnUndecidedPairIsToldItNeeds()
    {
        var plan = Planned(Four, new PlanRequest { Kind = PlanGoalKind.Difference, Ms = 0.5, SessionSdMs = 0.2, TrialSdMs = 2.6 });
        foreach (var one in plan.Alternatives.Where(one => one.TrialsPerSession > StudyPlanner.FewestTrials))
        {
            var variance = 2 * (0.04 + (2.6 * 2.6 / one.TrialsPerSession!.Value));
            var needed = NeededEffort.Of(variance, degreesPerSitting: 3, fewestSittings: 2, one.TrialsPerSession.Value, marginMs: 0.5, pairs: 6);
            Assert.InRange(needed!.Sittings, one.Sittings - 1, one.Sittings + 1);
        }
    }

    [Fact]
    public void Of_OneConditionForADifference_IsRefused() =>
        Assert.Throws<ArgumentException>(() => Planned(["pad"], new PlanRequest { Kind = PlanGoalKind.Difference }));

    [Fact]
    public void RunOrder_OfSittings_HoldsEveryConditionOnceAndSeedsOfItsOwn()
    {
        var order = RunOrder.Draw(Four, 3, ["sitting-2"], 1);

        Assert.Equal(["sitting-1", "sitting-3", "sitting-4"], order.Select(sitting => sitting.Sitting));
        Assert.All(order, sitting => Assert.Equal(Four.Order(), sitting.Runs.Select(run => run.Condition).Order()));
        Assert.All(order, sitting => Assert.Equal([1, 2, 3, 4], sitting.Runs.Select(run => run.Step)));
        Assert.Equal(12, order.SelectMany(sitting => sitting.Runs).Select(run => run.Seed).Distinct().Count());
    }

    [Fact]
    public void Json_OfPlans_FitsThePublishedSchema()
    {
        var schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "plan.schema.json")));
        foreach (var sessionSd in new[] { 0, 0.2, 5 })
        {
            var plan = Planned(Four, new PlanRequest { Kind = PlanGoalKind.Difference, SessionSdMs = sessionSd });
            var json = JsonDocument.Parse(PlanJson.Write(plan, RunOrder.Draw(Four, 2, [], 1))).RootElement;
            Assert.True(schema.Evaluate(json).IsValid, json.ToString());
        }
    }

    private static StudyPlan Planned(string[] conditions, PlanRequest request) => StudyPlanner.Of(new SyntheticStudy(1).Analyse(), conditions, request);
}
