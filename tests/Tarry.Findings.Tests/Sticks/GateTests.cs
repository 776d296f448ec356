using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>What turns say of gates with corners, and of axes whose last bits are always 0.</summary>
public class GateTests
{
    // A square of half side 90: its corners lie at 90 sqrt 2, its sides at 90, and the circle of least squares is about its middle.
    private const double OfSquare = 90 * (1.4142135623730951 - 1);

    [Theory]
    [InlineData(125)]
    [InlineData(250)]
    [InlineData(1_000)]
    public void RadialDeviation_OfASquare_HasWhatBinsBluntInItsInterval(double hertz)
    {
        var stick = new FaultyStick { RateHz = hertz, SquareMapping = true, Noise = 0.05 };
        var found = Enumerable.Range(1, 20).Select(seed => StickFindings.Of([], [stick.Rim((ulong)seed)])!.Conditions[0].Estimate(StickMeasure.RadialDeviation)!).ToList();
        Assert.InRange(found.Count(estimate => estimate.Low <= OfSquare && OfSquare <= estimate.High), 18, 20);
        Assert.InRange(found.Average(estimate => (estimate.High - estimate.Low) / 2), 0, 0.05 * OfSquare * 1_000 / hertz);
    }

    [Theory]
    [InlineData(256, 0.45)]
    [InlineData(1_024, 0.11)]
    public void CircleRadius_OfASquare_HoldsWhereASideIsRoundedAlike(int steps, double widest)
    {
        // The mean over all directions of the distance to a square of half side 1: the integral of 1/cos over 45 degrees is ln(1 + sqrt 2).
        var mean = 4 / Math.PI * Math.Log(1 + Math.Sqrt(2));
        var found = Enumerable.Range(0, 24).Select(index =>
        {
            var stick = new FaultyStick { RateHz = 500, SquareMapping = true, Noise = 0, Steps = steps, GateRadius = 85 + (0.21 * index) };
            return (Estimate: StickFindings.Of([], [stick.Rim((ulong)index + 1)])!.Conditions[0].Estimate(StickMeasure.CircleRadius)!, Truth: stick.GateRadius * mean);
        }).ToList();
        Assert.InRange(found.Count(one => one.Estimate.Low <= one.Truth && one.Truth <= one.Estimate.High), 22, 24);
        Assert.InRange(found.Average(one => (one.Estimate.High - one.Estimate.Low) / 2), 0, widest);
    }

    [Fact]
    public void DistinctSteps_OfASteadyMotionWithoutNoise_AreNotItsSpeed()
    {
        var finding = StickFindings.Of([], [new FaultyStick { RateHz = 250, Noise = 0 }.Sweeps(3, there: 2, seconds: 11, known: false)])!.Conditions[0];
        Assert.Equal(StickRefusalReason.NoStep, Assert.IsType<StickRefusal>(finding.Of(StickMeasure.DistinctSteps, StickPart.X)).Reason);
        Assert.Empty(finding.Faults);
    }

    [Theory]
    [InlineData(64, 1_024)]
    [InlineData(1_024, 64)]
    public void DistinctSteps_OfBitsThatAreAlways0_AreThoseThatAreSaid(int counts, double steps)
    {
        var rim = new FaultyStick { RateHz = 1_000 }.Rim(3);
        double[] Shifted(ReadOnlySpan<double> said) => [.. said.ToArray().Select(count => counts * Math.Floor((count + FaultyStick.Half) / counts))];
        var range = new StickRange(0, 65_535, 1);
        var setup = rim.Record.Stick! with { X = range, Y = range };
        var session = new StickSession(rim.Record with { Stick = setup }, new StickSamples(rim.Samples.Ticks.ToArray(), Shifted(rim.Samples.X), Shifted(rim.Samples.Y)));
        Assert.Equal(steps, StickFindings.Of([], [session])!.Conditions[0].Estimate(StickMeasure.DistinctSteps, StickPart.X)!.Value);
    }
}
