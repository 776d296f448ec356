using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>Noise and rounding both cost bits: log2(range/sqrt(12 variance)), the variance that of the noise and a twelfth of the squared step (IEEE Std 1057, effective number of bits).</summary>
public class EffectiveBitsTests
{
    [Theory]
    [InlineData(0.2, 65_536)]
    [InlineData(0.3, 1_024)]
    [InlineData(0.3, 256)]
    public void EffectiveBits_OfNoiseAndSteps_CountBoth(double noise, int steps)
    {
        var step = 200.0 / (steps - 1);
        var bits = Math.Log2(200 / Math.Sqrt(12 * ((noise * noise) + (step * step / 12))));
        var stick = new FaultyStick { Noise = noise, Steps = steps, RateHz = 250, OffsetX = 0.3 };
        var finding = StickFindings.Of([], [stick.Rest(1, seconds: 70), stick.Sweeps(1)])!.Conditions[0];
        Assert.InRange(finding.Estimate(StickMeasure.EffectiveBits, StickPart.X)!.Value, bits - 0.1, bits + 0.1);

        // At rest the position keeps its place between two levels, and noise of a third of a step does not make its rounding a twelfth there.
        Assert.InRange(finding.Estimate(StickMeasure.EffectiveResolution, StickPart.X)!.Value, bits - 0.3, bits + 0.3);
    }

    [Fact]
    public void EffectiveBits_OfOnePassEachWay_AreRefusedAndOfTwoAreTold()
    {
        var stick = new FaultyStick { Noise = 0.2, RateHz = 250 };
        var refusal = Assert.IsType<StickRefusal>(StickFindings.Of([], [stick.Sweeps(1, there: 1)])!.Conditions[0].Of(StickMeasure.EffectiveBits, StickPart.X));
        Assert.Equal((StickRefusalReason.TooFewPasses, 2, 3), (refusal.Reason, refusal.Have, refusal.Need));
        var told = StickFindings.Of([], [stick.Sweeps(1, there: 2)])!.Conditions[0].Estimate(StickMeasure.EffectiveBits, StickPart.X)!;
        Assert.Equal(4, told.Replicates);
        Assert.InRange(told.High - told.Low, 0, 1);
    }

    [Fact]
    public void PeakToPeak_ThatIsAlikeInEverySecond_IsNotKnownExactly()
    {
        // Three levels in every second, whatever the noise is exactly: the extremes that were rounded to them lie within a step of them.
        var finding = StickFindings.Of([], [new FaultyStick { Noise = 0.3, Steps = 256, RateHz = 250 }.Rest(1, seconds: 70)])!.Conditions[0];
        var told = finding.Estimate(StickMeasure.RestPeakToPeak, StickPart.X)!;
        Assert.InRange(told.High - told.Low, 0.05, 4 * 200.0 / 255);
    }
}
