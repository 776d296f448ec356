using Tarry.Rig.HostEvents.Echo;

namespace Tarry.Rig.Tests.HostEvents;

public class EchoDelaysTests
{
    [Fact]
    public void QuantileUs_OfCountedDelays_IsThatOfNearestRank()
    {
        // Nearest rank, the ordered list 15, 20, 35, 40, 50: the worked example of the 30th, 40th, 50th and 100th percentile at
        // en.wikipedia.org/wiki/Percentile gives 20, 20, 35 and 50.
        var delays = new EchoDelays();
        foreach (var us in new[] { 50, 15, 40, 20, 35 })
        {
            delays.Add(1000 * us);
        }

        Assert.Equal([20, 20, 35, 50], new[] { 0.3, 0.4, 0.5, 1 }.Select(level => delays.QuantileUs(level)!.Value));
        Assert.Equal((5, 50, 32.0), (delays.Count, delays.MaximumUs, delays.MeanUs));
    }

    [Fact]
    public void Add_OfAStampAheadOfTheClock_IsCountedApart()
    {
        var delays = new EchoDelays();
        delays.Add(-1);
        Assert.Equal((0, 1), (delays.Count, delays.FromTheFuture));
        Assert.Null(delays.QuantileUs(0.5));
        Assert.Null(delays.MeanUs);
    }

    [Fact]
    public void Add_OfAVeryLongDelay_KeepsTheMaximum()
    {
        var delays = new EchoDelays();
        delays.Add(10_000_000_000);
        Assert.Equal(10_000_000, delays.MaximumUs);
        Assert.Equal(1, delays.Count);
    }
}
