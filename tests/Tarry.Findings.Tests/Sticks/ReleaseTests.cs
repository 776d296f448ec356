using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>Releases as reports of different rates and hands of different care show them.</summary>
public class ReleaseTests
{
    [Theory]
    [InlineData(1_000, 15)]
    [InlineData(1_000, 6)]
    [InlineData(250, 6)]
    [InlineData(125, 6)]
    public void Overshoot_AtAnyReportRate_IsThatOfTheStick(double hertz, double returnMs)
    {
        var found = Finding(new FaultyStick { RateHz = hertz, ReturnMs = returnMs, ReleaseOvershoot = 20, Noise = 0.02 }).Estimate(StickMeasure.ReleaseOvershoot)!;
        Assert.InRange(20, found.Low, found.High);
        Assert.InRange(found.High - found.Low, 0, 1.2);
    }

    [Fact]
    public void Overshoot_OnFewSteps_AllowsForThem()
    {
        var inside = Enumerable.Range(0, 20).Count(index =>
        {
            var truth = 10 + (0.1 * index);
            var found = Finding(new FaultyStick { RateHz = 1_000, ReleaseOvershoot = truth, Noise = 0, Steps = 256, OffsetX = 0.2, OffsetY = 0.1 }).Estimate(StickMeasure.ReleaseOvershoot)!;
            return found.Low <= truth && truth <= found.High;
        });
        Assert.InRange(inside, 18, 20);
    }

    [Fact]
    public void Lag_BeforeAPushThatBeginsGently_IsNone()
    {
        var accused = Enumerable.Range(1, 20).Count(seed =>
            StickFindings.Of([], [new FaultyStick { RateHz = 1_000, PushExponent = 2.5, Noise = 0.02 }.Flicks((ulong)seed)])!.Conditions[0].Faults.Any(fault => fault.Measure == StickMeasure.ReturnLag));
        Assert.InRange(accused, 0, 2);
    }

    private static StickFinding Finding(FaultyStick stick) => StickFindings.Of([], [stick.Flicks(3)])!.Conditions[0];
}
