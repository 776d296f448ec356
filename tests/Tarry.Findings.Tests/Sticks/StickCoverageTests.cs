using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>Each fault, put into a simulated stick, is recovered within its interval in as many of 120 recordings as the level says, and by an interval that is worth having.</summary>
/// <remarks>Of 120 at 95 %, fewer than 105 have a chance of 0.0002 (binomial). Where rounding is in an interval it covers more.</remarks>
public class StickCoverageTests
{
    private const int Recordings = 120;
    private const int Fewest = 105;

    private static readonly Dictionary<string, (StickMeasure Measure, StickPart Part, double Truth, double Widest)[]> Truths = new()
    {
        ["offset"] = [(StickMeasure.CentreOffset, StickPart.X, 1.5, 0.01), (StickMeasure.CentreOffset, StickPart.Whole, 1.7, 0.01), (StickMeasure.CircleCentre, StickPart.Y, -0.8, 0.02)],
        ["correlated"] = [(StickMeasure.RestNoise, StickPart.X, 0.3, 0.04), (StickMeasure.CentreDrift, StickPart.X, 0.2, 0.15)],
        ["noise"] = [(StickMeasure.RestNoise, StickPart.Y, 0.8, 0.03), (StickMeasure.RadialDeviation, StickPart.Whole, 0, 0.6)],
        ["ellipse"] = [(StickMeasure.GainDifference, StickPart.Whole, 6.18556701, 0.05), (StickMeasure.RadialDeviation, StickPart.Whole, 5.4, 0.25), (StickMeasure.MinimumZone, StickPart.Whole, 5.4, 0.25)],
        ["skew"] = [(StickMeasure.NonOrthogonality, StickPart.Whole, 2, 0.03)],
        ["hysteresis"] = [(StickMeasure.Hysteresis, StickPart.X, 2, 0.1)],
        ["hysteresis-of-an-ellipse"] = [(StickMeasure.Hysteresis, StickPart.X, 2, 0.1), (StickMeasure.Hysteresis, StickPart.Y, 2, 0.1)],
        ["swept-hysteresis"] = [(StickMeasure.Hysteresis, StickPart.X, 2, 0.1)],
        ["quantisation"] = [(StickMeasure.DistinctSteps, StickPart.X, 256, 0.1), (StickMeasure.CentreOffset, StickPart.X, 0.3, 0.5)],
        ["axial-dead-zone"] = [(StickMeasure.InnerDeadZone, StickPart.X, 6, 0.4)],
        ["cut-dead-zone"] = [(StickMeasure.InnerDeadZone, StickPart.X, 6, 0.4)],
        ["unknown-dead-zone"] = [(StickMeasure.InnerDeadZone, StickPart.X, 6, 0.4)],
        ["saturation"] = [(StickMeasure.OuterSaturation, StickPart.X, 85, 0.5)],
        ["square"] = [(StickMeasure.Squareness, StickPart.Whole, 100, 0.5)],
        ["return"] = [(StickMeasure.ReturnLag, StickPart.Whole, 0.8, 0.5), (StickMeasure.ReturnScatter, StickPart.Whole, 0.5, 0.25)],
        ["rotation"] = [(StickMeasure.AngularRotation, StickPart.Whole, 1.5, 0.15)],
        ["jump"] = [(StickMeasure.StepLatency, StickPart.X, 12 + (8 / Math.Log(9) * Math.Log(2)), 4)],
    };

    public static TheoryData<string> Faults => [.. Truths.Keys];

    [Theory]
    [MemberData(nameof(Faults))]
    public void Estimates_OfAKnownFault_CoverIt(string fault)
    {
        var findings = new StickFinding[Recordings];
        Parallel.For(0, Recordings, seed => findings[seed] = StickFindings.Of([], Record(fault, (ulong)seed + 1))!.Conditions[0]);
        Assert.All(Truths[fault], entry =>
        {
            var estimates = findings.Select(finding => finding.Estimate(entry.Measure, entry.Part)).ToList();
            Assert.All(estimates, Assert.NotNull);
            Assert.InRange(estimates.Count(estimate => estimate!.Low <= entry.Truth && entry.Truth <= estimate.High), Fewest, Recordings);
            Assert.InRange(estimates.Average(estimate => (estimate!.High - estimate.Low) / 2), 0, entry.Widest);
        });
    }

    private static StickSession[] Record(string fault, ulong seed)
    {
        var stick = new FaultyStick { RateHz = 250 };
        return fault switch
        {
            "offset" => Both(stick with { OffsetX = 1.5, OffsetY = -0.8 }),
            "correlated" => [(stick with { Correlation = 0.98, Noise = 0.3, DriftPerMinute = 0.2 }).Rest(seed)],
            "noise" => Both(stick with { Noise = 0.8 }),
            "ellipse" => [(stick with { GainX = 1.03, GainY = 0.97 }).Rim(seed)],
            "skew" => [(stick with { SkewDegrees = 2 }).Rim(seed)],
            "hysteresis" => [(stick with { Hysteresis = 2 }).Rim(seed)],
            "hysteresis-of-an-ellipse" => [(stick with { Hysteresis = 2, GainX = 1.03, GainY = 0.97 }).Rim(seed)],
            "swept-hysteresis" => [(stick with { Hysteresis = 2 }).Sweeps(seed)],
            "quantisation" => Both(stick with { Steps = 256, Noise = 0.05, OffsetX = 0.3 }),
            "axial-dead-zone" => [(stick with { DeadZone = 6 }).Sweeps(seed)],
            "cut-dead-zone" => [(stick with { DeadZone = 6, DeadZoneIsStretched = false }).Sweeps(seed)],
            "unknown-dead-zone" => [(stick with { DeadZone = 6 }).Sweeps(seed, known: false)],
            "saturation" => [(stick with { Saturation = 85 }).Sweeps(seed)],
            "square" => [(stick with { SquareMapping = true }).Rim(seed)],
            "return" => [(stick with { ReturnLag = 0.8, ReturnScatter = 0.5 }).Flicks(seed)],
            "rotation" => [(stick with { RotationDegrees = 1.5 }).Stops(seed)],
            "jump" => [(stick with { DelayMs = 12, RiseMs = 8 }).Jumps(seed)],
            _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "No such fault."),
        };

        StickSession[] Both(FaultyStick faulty) => [faulty.Rest(seed, seconds: 70), faulty.Rim(seed)];
    }
}
