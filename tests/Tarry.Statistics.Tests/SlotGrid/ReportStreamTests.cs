using Tarry.Metrology;
using Tarry.Statistics.Drift;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Statistics.Tests.SlotGrid;

public sealed class ReportStreamTests
{
    [Fact]
    public void Stream_WithMissedAndDoubledReports_GivesItsSlots()
    {
        var random = new SeededGenerator(7);
        var times = new List<double>();
        var (missed, doubled) = (0, 0);
        const double slot = 1.0001;
        for (var k = 0; k < 5000; k++)
        {
            if (k is > 0 and < 4999 && random.NextDouble() < 0.02)
            {
                missed++;
                continue;
            }

            var at = (slot * k) + (0.05 * random.NextNormal());
            times.Add(at);
            if (random.NextDouble() < 0.01)
            {
                times.Add(at + 0.05);
                doubled++;
            }
        }

        times.Sort();
        var found = ReportStream.Of(times.ToArray())!;
        Assert.Equal(slot, found.IntervalMs, 5e-6);
        Assert.InRange(slot, found.LowMs - 1e-6, found.HighMs + 1e-6);
        Assert.Equal(missed, found.MissedSlots);
        Assert.Equal(doubled, found.DoubledReports);

        // Standard error of a standard deviation: 0.05/sqrt(2 n) is 0.0005; the doubled ones add a little.
        Assert.Equal(0.05, found.JitterMs, 0.004);
    }

    [Fact]
    public void Stream_Coverage_IsNominal()
    {
        var covered = 0;
        for (ulong run = 0; run < 200; run++)
        {
            var random = new SeededGenerator(run);
            var times = Enumerable.Range(0, 400).Select(k => (8.0 * k) + (0.3 * random.NextNormal())).ToArray();
            Array.Sort(times);
            var found = ReportStream.Of(times)!;
            covered += found.LowMs <= 8 && found.HighMs >= 8 ? 1 : 0;
        }

        // 95 % of 200 is 190 +- 3.1.
        Assert.InRange(covered, 178, 200);
    }

    [Fact]
    public void Stream_OutOfOrder_SaysWhere() =>
        Assert.Contains("[3]", Assert.Throws<ArgumentException>(() => ReportStream.Of([0, 1, 2, 1.5, .. Enumerable.Range(3, 200).Select(k => (double)k)])).Message, StringComparison.Ordinal);

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
