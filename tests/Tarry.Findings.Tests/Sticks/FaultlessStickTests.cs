using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Faults;
using Tarry.Findings.Sticks.Measures;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>A perfect stick is called perfect, and a faulty one by its faults.</summary>
public class FaultlessStickTests
{
    // Of 80 studies at 5 %, more than 12 have a chance of 0.0003 (binomial).
    [Theory]
    [InlineData(65_535, 0.1, 1)]
    [InlineData(65_535, 0.6, 1)]
    [InlineData(65_535, 0.1, 3)]
    public void Faults_OfPerfectSticks_AreRaisedInOneStudyOfTwentyAtMost(int steps, double noise, int sittings)
    {
        const int studies = 80;
        var accused = 0;
        Parallel.For(0, studies, seed =>
        {
            var sticks = StickFindings.Of([], Everything(new FaultyStick { Steps = steps, Noise = noise, RateHz = 200 }, (ulong)(seed + 1), sittings))!;
            Interlocked.Add(ref accused, sticks.Conditions.Any(condition => condition.Faults.Count > 0) ? 1 : 0);
        });
        Assert.InRange(accused, 0, 12);
    }

    [Fact]
    public void Faults_OfAPerfectCoarseStick_AreItsStepsAlone()
    {
        var finding = StickFindings.Of([], Everything(new FaultyStick { Steps = 256, Noise = 0, RateHz = 250 }, 3, 1))!.Conditions[0];
        Assert.All(finding.Faults, fault => Assert.Equal(StickFaultKind.CoarseSteps, fault.Kind));
        Assert.Equal(2, finding.Faults.Count);
        var offset = finding.Estimate(StickMeasure.CentreOffset, StickPart.X)!;
        Assert.True(offset.Low <= 0 && offset.High >= 0, $"{offset.Low} to {offset.High}");
    }

    [Theory]
    [InlineData("offset", StickFaultKind.OffCentre)]
    [InlineData("drift", StickFaultKind.Drifts)]
    [InlineData("ellipse", StickFaultKind.UnequalGain)]
    [InlineData("skew", StickFaultKind.NotOrthogonal)]
    [InlineData("hysteresis", StickFaultKind.Hysteresis)]
    [InlineData("dead-zone", StickFaultKind.DeadZone)]
    [InlineData("saturation", StickFaultKind.Saturation)]
    [InlineData("square", StickFaultKind.Square)]
    [InlineData("bend", StickFaultKind.NotLinear)]
    [InlineData("lag", StickFaultKind.ReturnsShort)]
    [InlineData("overshoot", StickFaultKind.Overshoots)]
    [InlineData("rotation", StickFaultKind.Rotated)]
    public void Faults_OfAFaultyStick_HoldTheOnePutIn(string fault, StickFaultKind kind)
    {
        var stick = new FaultyStick { RateHz = 250 };
        stick = fault switch
        {
            "offset" => stick with { OffsetX = 1 },
            "drift" => stick with { DriftPerMinute = 0.2 },
            "ellipse" => stick with { GainX = 1.03 },
            "skew" => stick with { SkewDegrees = 2 },
            "hysteresis" => stick with { Hysteresis = 1.5 },
            "dead-zone" => stick with { DeadZone = 5 },
            "saturation" => stick with { Saturation = 90 },
            "square" => stick with { SquareMapping = true },
            "bend" => stick with { Bend = 2 },
            "lag" => stick with { ReturnLag = 0.5 },
            "overshoot" => stick with { ReleaseOvershoot = 10 },
            _ => stick with { RotationDegrees = 2 },
        };
        Assert.Contains(StickFindings.Of([], Everything(stick, 5, 1))!.Conditions[0].Faults, found => found.Kind == kind);
    }

    [Theory]
    [InlineData(false, DeadZoneForm.Axial)]
    [InlineData(true, DeadZoneForm.Radial)]
    public void DeadZone_OfATurnAlongTheGate_TellsItsForm(bool radial, DeadZoneForm form)
    {
        var stick = new FaultyStick { DeadZone = 8, DeadZoneIsRadial = radial, RateHz = 250 };
        Assert.Equal(form, StickFindings.Of([], [stick.Sweeps(4), stick.Rim(4)])!.Conditions[0].DeadZone);
    }

    internal static StickSession[] Everything(FaultyStick stick, ulong seed, int sittings, string condition = "pad") =>
    [
        .. Enumerable.Range(0, sittings).SelectMany(sitting =>
        {
            var (part, name) = (seed + (1_000 * (ulong)sitting), $"day-{sitting}");
            return new[]
            {
                stick.Rest(part, condition, name, 70), stick.Rim(part, condition: condition, sitting: name), stick.Flicks(part, condition: condition, sitting: name),
                stick.Stops(part, condition: condition, sitting: name), stick.Sweeps(part, condition: condition, sitting: name),
            };
        }),
    ];
}
