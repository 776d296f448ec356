using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Reshaping;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>Layers of another form than a dead zone, a saturation and a power, and turns that cannot be compared.</summary>
public class ReshapingFormTests
{
    private static readonly FaultyStick Stick = new();

    private static readonly ConditionEntry[] Conditions =
    [
        new ConditionEntry { Id = "without", Factors = new Dictionary<string, string> { ["layer"] = "none" } },
        new ConditionEntry { Id = "with", Factors = new Dictionary<string, string> { ["layer"] = "shaper" } },
    ];

    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    public void Reshaping_ByAnSOfACurve_IsACurveAndNeitherZoneNorSaturation(double share)
    {
        var found = Compared(Bent(Stick.Sweeps(3, condition: "with"), share), Stick.Sweeps(4, condition: "without"));
        Assert.Equal([ReshapingKind.Curve], found.Kinds);
        Holds(found.DeadZone, 0, 12.5);
        Holds(found.Saturation, 100, 12.5);
    }

    [Fact]
    public void Reshaping_OverTwoSittings_IsToldByThemAndSaysSo()
    {
        StickSession[] with = [Bent(Stick.Sweeps(3, condition: "with"), 1), Bent(Stick.Sweeps(5, condition: "with", sitting: "two"), 1)];
        var found = StickFindings.Of(Conditions, [.. with, Stick.Sweeps(4, condition: "without"), Stick.Sweeps(6, condition: "without", sitting: "two")])!.Reshapings.Single();
        Assert.Equal([ReshapingKind.Curve], found.Kinds);
        var exponent = Assert.IsType<StickEstimate>(found.Exponent);
        Assert.Equal((2, 4, "sessions with and without"), (exponent.Sessions, exponent.Replicates, exponent.ReplicateOf));
    }

    [Fact]
    public void Reshaping_ByAnSBeyondADeadZone_HasTheZoneBetweenTwoLevels()
    {
        var found = Compared(Bent((Stick with { DeadZone = 15 }).Sweeps(3, condition: "with"), 1), Stick.Sweeps(4, condition: "without"));
        Assert.Equal([ReshapingKind.DeadZone, ReshapingKind.Curve], found.Kinds);
        Holds(found.DeadZone, 15, 12.5);
    }

    [Fact]
    public void Squareness_OfACircleThatALayerCuts_IsRefusedForThat()
    {
        var found = Compared((Stick with { GateRadius = 115 }).Rim(5, condition: "with"), Stick.Rim(6, condition: "without"));
        Assert.Equal(StickRefusalReason.CutOff, Assert.IsType<StickRefusal>(found.Squareness).Reason);
    }

    [Theory]
    [InlineData(7)]
    [InlineData(11)]
    public void Reach_OfTurnsThatStickToTheAxes_IsNotReadFromBeyondTheZone(double zone)
    {
        // In a cut zone of 7 to 11 % nothing lies between an axis and 4 to 7 degrees from it; along the axes the gate is met as it is.
        for (var seed = 1UL; seed <= 40; seed++)
        {
            var finding = StickFindings.Of([], [(Stick with { RateHz = 250, Steps = 256, Noise = 0.2, DeadZone = zone, DeadZoneIsStretched = false }).Rim(seed)])!.Conditions[0];
            Assert.All(new[] { StickPart.Right, StickPart.Up, StickPart.Left, StickPart.Down }, part => Assert.InRange(finding.Estimate(StickMeasure.Reach, part)!.Value, 89, 91));
        }
    }

    [Fact]
    public void DeadZone_OfAShortRampHeldAtItsEnds_IsNone()
    {
        for (var seed = 1UL; seed <= 10; seed++)
        {
            var finding = StickFindings.Of([], [(Stick with { RateHz = 1_000, Noise = 0 }).Sweeps(seed, there: 2, known: false, reach: 25, held: 0.1)])!.Conditions[0];
            Assert.InRange(Math.Abs(finding.Estimate(StickMeasure.InnerDeadZone, StickPart.X)!.Value), 0, 0.1);
            Assert.DoesNotContain(finding.Faults, fault => fault.Measure == StickMeasure.InnerDeadZone);
        }
    }

    private static ReshapingFinding Compared(StickSession with, StickSession without) => StickFindings.Of(Conditions, [with, without])!.Reshapings.Single();

    // r + share (3 r^2 - 2 r^3 - r): small positions are made smaller and large ones larger.
    private static StickSession Bent(StickSession session, double share)
    {
        double[] Through(ReadOnlySpan<double> said) => [.. said.ToArray().Select(count =>
        {
            var r = Math.Abs(count) / FaultyStick.Half;
            return Math.Sign(count) * Math.Round(FaultyStick.Half * (r + (share * ((3 * r * r) - (2 * r * r * r) - r))));
        })];
        var samples = session.Samples;
        return new StickSession(session.Record, new StickSamples(samples.Ticks.ToArray(), Through(samples.X), Through(samples.Y), samples.Stimulus.ToArray(), samples.StimulusY.ToArray()));
    }

    private static void Holds(StickOutcome outcome, double truth, double widest)
    {
        var estimate = Assert.IsType<StickEstimate>(outcome);
        Assert.InRange(truth, estimate.Low - 0.05, estimate.High + 0.05);
        Assert.InRange(estimate.High - estimate.Low, 0, widest);
    }
}
