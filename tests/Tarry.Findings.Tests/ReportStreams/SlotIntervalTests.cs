using Tarry.Findings.ReportStreams;
using Tarry.Metrology;

namespace Tarry.Findings.Tests.ReportStreams;

/// <summary>Streams made with a known interval; the polling arithmetic of USB 2.0 says which intervals there are.</summary>
public class SlotIntervalTests
{
    [Theory]
    [InlineData(0.125, 0.002)]
    [InlineData(1, 0.01)]
    [InlineData(4, 0.2)]
    [InlineData(7.5, 0.3)]
    [InlineData(8, 0)]
    [InlineData(11.25, 0.5)]
    public void Interval_SteadyStream_IsFoundWithinItsInterval(double slotMs, double jitterSdMs)
    {
        var generator = new SeededGenerator(31);
        var times = Enumerable.Range(0, 2_000).Select(index => (index * slotMs) + (jitterSdMs * generator.NextNormal())).Order().ToArray();

        var estimate = Assert.IsType<Estimate<Latency>>(SlotInterval.Of(times));

        // The median of 1,999 differences of two normals: standard error 1.2533 x sd x sqrt(2 / 1,999); five of them.
        Assert.InRange(estimate.Value.Milliseconds, slotMs - 1e-9 - (0.2 * jitterSdMs), slotMs + 1e-9 + (0.2 * jitterSdMs));
        Assert.True(estimate.Interval.Contains(estimate.Value));
    }

    // The median of few reports, and the slope of many.
    [Theory]
    [InlineData(150)]
    [InlineData(400)]
    public void Interval_OverThreeHundredStreams_HoldsTheTruthAsOftenAsItSays(int reports)
    {
        var held = 0;
        for (ulong seed = 0; seed < 300; seed++)
        {
            var generator = new SeededGenerator(seed + 500);
            // Intervals that are independent, as a host's polling delays are when the device waits for the next frame.
            var time = 0.0;
            var times = Enumerable.Range(0, reports).Select(_ => time += 4 + (0.1 * generator.NextNormal())).ToArray();
            held += ((Estimate<Latency>)SlotInterval.Of(times)).Interval.Contains(Latency.FromMilliseconds(4)) ? 1 : 0;
        }

        // Binomial(300, 0.95): below 274 with a chance of 0.0015 at the exact level.
        Assert.InRange(held, 274, 300);
    }

    [Fact]
    public void Interval_StreamOfChanges_IsTheSlotAndNotAMultiple()
    {
        // A device that reports changes only: 1 to 6 slots of 8 ms apart.
        var generator = new SeededGenerator(8);
        var time = 0.0;
        var times = Enumerable.Range(0, 500).Select(_ => time += 8 * (1 + generator.NextInt32(6))).ToArray();

        var estimate = Assert.IsType<Estimate<Latency>>(SlotInterval.Of(times));

        Assert.Equal(8, estimate.Value.Milliseconds, 9);
    }

    [Fact]
    public void Interval_NoGridOrTooFew_IsNotTold()
    {
        var generator = new SeededGenerator(9);
        var time = 0.0;
        var random = Enumerable.Range(0, 500).Select(_ => time += -10 * Math.Log(1 - generator.NextDouble())).ToArray();

        Assert.IsType<NotEnough<Latency>>(SlotInterval.Of(random));
        Assert.IsType<NotEnough<Latency>>(SlotInterval.Of([]));
        Assert.IsType<NotEnough<Latency>>(SlotInterval.Of([1]));
        Assert.Equal(new NotEnough<Latency>(5, 6, "report intervals of one slot on a grid"), SlotInterval.Of([0, 8, 16, 24, 32, 40]));
        Assert.IsType<NotEnough<Latency>>(SlotInterval.Of([3, 3, 3, 3, 3, 3, 3, 3]));
    }

    [Fact]
    public void SlotCounts_GapsPausesAndDoubles_AreCounted()
    {
        var counts = SlotCounts.Of([8, 8.1, 7.9, 16, 24.2, 0.1, 8, 8 * 16, 8 * 17], 8);

        // 16 is one missed slot, 24.2 two, 128 fifteen; 136 is a pause.
        Assert.Equal((4, 18, 1, 1), (counts.Filled, counts.Missed, counts.Pauses, counts.Doubled));
        Assert.Equal(Math.Sqrt(0.02 / 3), counts.JitterMs!.Value, 12);
    }
}
