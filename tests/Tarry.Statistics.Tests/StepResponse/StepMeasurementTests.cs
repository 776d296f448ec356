using Tarry.Statistics.StepResponse;

namespace Tarry.Statistics.Tests.StepResponse;

/// <summary>Closed forms of linear systems: K. Ogata, Modern Control Engineering, 5-2 and 5-3 (from memory).</summary>
public class StepMeasurementTests
{
    private static readonly double[] Times = [.. Enumerable.Range(-2_000, 12_000).Select(i => i * 0.01)];

    [Fact]
    public void Of_AFirstOrderResponse_FindsLogarithms()
    {
        // 1 - exp(-(t - 5)/3): crosses a share s at 5 - 3 ln(1 - s); rise 3 ln 9; settles to 2 % at 5 + 3 ln 50.
        var found = StepMeasurement.Of(Times, Response(t => t < 5 ? 0 : 1 - Math.Exp(-(t - 5) / 3)), jump: 0)!.Value;
        Assert.Equal(5 + (3 * Math.Log(2)), found.Delay, 1e-3);
        Assert.Equal(3 * Math.Log(9), found.Transition, 1e-3);
        Assert.Equal(5 + (3 * Math.Log(50)), found.Settling, 0.011);
        Assert.Equal(0, found.Overshoot, 1e-9);
    }

    [Theory]
    [InlineData(0.3)]
    [InlineData(0.6)]
    public void Of_ASecondOrderResponse_FindsItsOvershoot(double damping)
    {
        var root = Math.Sqrt(1 - (damping * damping));
        var found = StepMeasurement.Of(Times, Response(t => t < 0 ? 200 : 200 - (300 * (1 - (Math.Exp(-damping * t) / root * Math.Sin((root * t) + Math.Acos(damping)))))), jump: 0)!.Value;
        Assert.Equal(Math.Exp(-Math.PI * damping / root), found.Overshoot, 1e-4);
        Assert.Equal(200, found.Base, 1e-9);
        Assert.Equal(-100, found.Top, 1e-3);
    }

    [Fact]
    public void Of_AJumpWithinNoise_IsNone() =>
        Assert.Null(StepMeasurement.Of(Times, Response(t => t < 5 ? 0 : 1), jump: 0, noise: 0.2));

    [Fact]
    public void Of_TooFewPositions_IsNone() =>
        Assert.Null(StepMeasurement.Of([0, 1, 2, 3, 4], [0, 0, 1, 1, 1], jump: 1));

    private static double[] Response(Func<double, double> of) => [.. Times.Select(of)];
}
