using Tarry.Metrology;
using Tarry.Statistics.Drift;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Statistics.Tests.SlotGrid;

public sealed class SlotSlopeTests
{
    private const double Slot = 1.0001;

    [Fact]
    public void Slope_WithMissedDoubledAndPausedReports_IsThatOfTheSlots()
    {
        var random = new SeededGenerator(7);
        var times = new List<double>();
        for (var k = 0; k < 5000; k++)
        {
            if (random.NextDouble() < 0.02)
            {
                continue;
            }

            // A pause of a second, not a whole number of slots, after each 500.
            var at = (Slot * k) + (1000.3 * (k / 500)) + (0.05 * random.NextNormal());
            times.Add(at);
            if (random.NextDouble() < 0.01)
            {
                times.Add(at + 0.05);
            }
        }

        times.Sort();
        var found = SlotSlope.Of(times.ToArray(), 0.99)!;

        // Least squares in a block of 250: sd sqrt(12) x 0.05 / 250^1.5 = 4.4e-5; over sqrt(20) 1e-5; five of them.
        Assert.Equal(Slot, found.IntervalMs, 5e-5);
        Assert.InRange(Slot, found.LowMs, found.HighMs);
    }

    [Theory]
    [InlineData(0.3, 0)]
    [InlineData(0, 0.1)]
    [InlineData(0.1, 0.1)]
    [InlineData(0.1, 0.005)]
    public void Slope_WithJitterOrAWanderingClock_IsHeldAsOftenAsItSays(double jitter, double walk)
    {
        var held = 0;
        for (ulong run = 0; run < 300; run++)
        {
            var random = new SeededGenerator(run + 40);
            var wander = 0.0;
            var times = Enumerable.Range(0, 400).Select(k => (8.0 * k) + (wander += walk * random.NextNormal()) + (jitter * random.NextNormal())).ToArray();
            Array.Sort(times);
            var found = SlotSlope.Of(times, 8.01)!;
            held += found.LowMs <= 8 && found.HighMs >= 8 ? 1 : 0;
        }

        // Binomial(300, 0.95): below 274 with a chance of 0.0015.
        Assert.InRange(held, 274, 300);
    }

    [Fact]
    public void Slope_OutOfOrder_SaysWhere() =>
        Assert.Contains("[3]", Assert.Throws<ArgumentException>(() => SlotSlope.Of([0, 1, 2, 1.5, .. Enumerable.Range(3, 200).Select(k => (double)k)], 1)).Message, StringComparison.Ordinal);

    [Fact]
    public void Slope_OfReportsThatNeverFollowOneAnother_IsNone() =>
        Assert.Null(SlotSlope.Of([.. Enumerable.Range(0, 200).Select(k => 100.0 * k)], 1));

    // Times that lie on 3 modulo 8; every divisor of 8 fits as well, so the largest that fits is the period (worked by hand:
    // remainders modulo 16 are 3 three times and 11 four times, which leaves 1/7).
    [Theory]
    [InlineData(8, 1)]
    [InlineData(4, 1)]
    [InlineData(2, 1)]
    [InlineData(16, 1 / 7.0)]
    [InlineData(7, 0.123966782605)]
    [InlineData(5, 0.231147712679)]
    [InlineData(24, 0.515078753638)]
    public void MeanPhasor_OfPollingTimes_IsWorkedByHand(double period, double expected)
    {
        double[] times = [3, 11, 27, 35, 59, 75, 99];
        Assert.Equal(expected, RayleighTest.Of(times.Select(time => time / period).ToArray()).ResultantLength, 1e-10);
    }
}
