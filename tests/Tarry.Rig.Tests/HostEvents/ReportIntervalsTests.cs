using Tarry.Metrology;
using Tarry.Rig.HostEvents.Watching;

namespace Tarry.Rig.Tests.HostEvents;

public class ReportIntervalsTests
{
    [Fact]
    public void SoFar_OfNothingOrOneReport_HasNoInterval()
    {
        var intervals = new ReportIntervals();
        Assert.Null(intervals.SoFar().MedianUs);
        intervals.Add(5, false);
        Assert.Equal((1, 0, null), (intervals.Reports, intervals.Count, intervals.SoFar().P99Us));
    }

    [Fact]
    public void SoFar_OfAKnownStream_CountsWhatWasPutIn()
    {
        // Slots of 1 ms with +-50 us of scatter; every 50th report left out, every 70th sent twice, a rest of 20 ms at two places.
        var random = new SeededGenerator(5);
        var intervals = new ReportIntervals();
        var (missed, doubled, pauses) = (0, 0, 0);
        var at = 0L;
        for (var slot = 1; slot <= 5000; slot++)
        {
            at += 1_000_000;
            if (slot is 1000 or 3000)
            {
                at += 20_000_000;
                pauses++;
            }
            else if (slot % 50 == 7)
            {
                missed++;
                continue;
            }

            var stamp = at + (random.NextInt32(100_001) - 50_000);
            intervals.Add(stamp, false);
            if (slot % 70 == 3)
            {
                intervals.Add(stamp + 100_000, false);
                doubled++;
            }
        }

        var value = intervals.SoFar();
        Assert.Equal((missed, doubled, pauses, 0), (value.Missed, value.Doubled, value.Pauses, value.Backwards));
        Assert.InRange(value.MedianUs!.Value, 990, 1010);
        Assert.Equal(intervals.Count, intervals.Lengths.Sum(entry => (long)entry.Count));
    }

    [Fact]
    public void QuantileUs_IsThatOfTheSortedIntervals()
    {
        var random = new SeededGenerator(6);
        var intervals = new ReportIntervals();
        intervals.Add(0, false);
        var (at, lengths) = (0L, new List<long>());
        for (var index = 0; index < 999; index++)
        {
            // Some beyond a tenth of a second, where they are counted in another place.
            lengths.Add(random.NextInt32(index % 10 == 0 ? 2_000_000 : 3000));
            at += 1000 * lengths[^1];
            intervals.Add(at, false);
        }

        lengths.Sort();
        foreach (var level in new[] { 0.01, 0.5, 0.9, 0.99, 1 })
        {
            Assert.Equal(lengths[(int)Math.Ceiling(level * 999) - 1], intervals.QuantileUs(level));
        }
    }

    [Fact]
    public void Add_AfterALossOrBackwards_MakesNoInterval()
    {
        var intervals = new ReportIntervals();
        intervals.Add(1_000_000, false);
        intervals.Add(9_000_000, true);
        intervals.Add(8_000_000, false);
        Assert.Equal((3, 0, 1), (intervals.Reports, intervals.Count, intervals.SoFar().Backwards));
    }
}
