using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Statistics.Tests.SlotGrid;

/// <summary>The fixed delay of simulated chains whose delay is known: 1 ms before the slot and 5 ms behind the frame.</summary>
public sealed class FixedDelayTests
{
    [Theory]
    [InlineData(2, 0)]
    [InlineData(8, 0)]
    [InlineData(8, 0.03)]
    public void Delay_BehindAStableGridOfFrames_IsFoundWithinItsError(double slotMs, double lateShare)
    {
        var found = Delays(new SimulatedSlots { SlotMs = slotMs, Frames = FrameKind.Jittered, FrameJitterMs = 0, LateShare = lateShare }).Cast<FixedDelayFound>().ToList();
        Assert.Equal(6, found.Count);
        Assert.All(found, delay =>
        {
            // Four standard errors: one in 16,000 by the normal law, six delays in each of three cases.
            Assert.True(Math.Abs(delay.DelayMs - 6) < 4 * delay.StandardErrorMs, $"{delay}");
            Assert.InRange(delay.StandardErrorMs, 0.002, FixedDelayFound.LargestStandardErrorMs);
        });
    }

    [Fact]
    public void Delay_BehindFramesThatJitter_IsRefusedWithTheJitterSeen()
    {
        Assert.All(Delays(new SimulatedSlots { SlotMs = 8, Frames = FrameKind.Jittered, FrameJitterMs = 0.3 }), delay =>
        {
            var refused = Assert.IsType<FixedDelayRefused>(delay);
            Assert.Equal(FixedDelayReason.TooUncertain, refused.Reason);
            Assert.Equal(0.3, refused.BlurMs!.Value, 0.1);
        });
    }

    [Fact]
    public void Delay_BehindFramesThatWander_IsRefused() => Assert.All(
        Delays(new SimulatedSlots { SlotMs = 8, Frames = FrameKind.Walking, FrameJitterMs = 0.01 }),
        delay => Assert.Equal(FixedDelayReason.FramesWander, Assert.IsType<FixedDelayRefused>(delay).Reason));

    private static List<FixedDelayOutcome> Delays(SimulatedSlots device)
    {
        var delays = new List<FixedDelayOutcome>();
        for (var run = 0UL; run < 3; run++)
        {
            var random = SeededGenerator.ForPart(7, run);
            var reference = device with { SlotMs = 1, SlotPpm = 0, BeforeMs = 0.1, LateShare = 0 };
            var (references, series) = (new List<PressSeries>(), new List<PressSeries>());
            foreach (var sitting in new[] { "one", "two" })
            {
                references.Add(reference.Session(sitting, random));
                series.Add(device.Session(sitting, random));
            }

            var found = Assert.IsType<ReportIntervalFound>(ReportIntervalSearch.Of(series, ChainGrids.Of(references, 1), null));
            delays.AddRange(found.Series.Select(one => one.FixedDelay));
        }

        return delays;
    }
}
