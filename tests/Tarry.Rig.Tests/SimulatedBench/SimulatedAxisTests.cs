using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Tests.Runs;
using Tarry.Studies.Sessions;

namespace Tarry.Rig.Tests.SimulatedBench;

/// <summary>When a simulated device sees its axis cross, against the closed forms of the mean of a straight ramp over a window.</summary>
public class SimulatedAxisTests
{
    // q is the part of the way at which the device's threshold lies. A step seen through a window of W crosses at q W; a ramp of
    // R seen at once at q R; a ramp seen through a window no longer than q R at q R + W / 2.
    [Theory]
    [InlineData(0, 60_000, 45_000, 0, 4, 0.75 * 4)]
    [InlineData(0, 60_000, 45_000, 10, 0, 0.75 * 10)]
    [InlineData(0, 60_000, 45_000, 10, 4, (0.75 * 10) + 2)]
    [InlineData(60_000, 0, 45_000, 10, 0, 0.25 * 10)]
    [InlineData(20_000, 40_000, 25_000, 8, 1, (0.25 * 8) + 0.5)]
    [InlineData(20_000, 40_000, 20_000, 8, 1, 0)]
    public void Press_OfARampThroughAWindow_CrossesByTheClosedForm(int low, int high, int threshold, double rampMs, double windowMs, double expectedMs) =>
        Assert.Equal(1000 * expectedMs, Crossing(low, high, threshold, rampMs, windowMs)!.Value, 0.05);

    [Theory]
    [InlineData(0, 40_000, 40_001)]
    [InlineData(60_000, 30_000, 29_999)]
    public void Press_WhoseEndIsShortOfTheThreshold_NeverCrosses(int low, int high, int threshold) =>
        Assert.Null(Crossing(low, high, threshold, 5, 0));

    /// <summary>What the bench injects where nothing but the axis delays.</summary>
    private static double? Crossing(int low, int high, int threshold, double rampMs, double windowMs)
    {
        using var temporary = new TemporaryStudy();
        var bench = new SimulatedRigPortSource(new SimulatedDevice { AxisThreshold = threshold, AxisFilterMs = windowMs }, new SimulatedRigOptions());
        var axis = new Actuation("axis", new AxisActuation("dac", low, high, (low + high) / 2, (long)(1000 * rampMs)));
        temporary.Run(bench, new RunRequest { Key = TemporaryStudy.Key, Trials = 1, Settings = RunRequest.DefaultSettings with { Actuation = axis } });
        return bench.Injected[0].LatencyTicks / 16.0;
    }
}
