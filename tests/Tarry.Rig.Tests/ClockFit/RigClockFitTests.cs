using Tarry.Metrology;
using Tarry.Rig.ClockFit;
using Tarry.Studies.Sessions;

namespace Tarry.Rig.Tests.ClockFit;

public class RigClockFitTests
{
    private const long TickHz = 16_000_000;

    [Theory]
    [InlineData(3000)]
    [InlineData(-3000)]
    [InlineData(0)]
    [InlineData(20)]
    public void Fit_SixtySecondsOfPings_RecoversTheInjectedRate(double ppm)
    {
        var fit = Pings(ppm, 60, 1, seed: 1).Fit();
        Assert.NotNull(fit);
        Assert.InRange(fit.RateErrorPpm, ppm - 2, ppm + 2);
        Assert.InRange(fit.StandardUncertaintyPpm, 0.01, 2);
    }

    [Fact]
    public void Fit_ManySeeds_IsAsFarOffAsItsUncertaintySays()
    {
        // The ratio of error to standard uncertainty has a root mean square near 1; with some 15 pings a fit the bounds are wide.
        var ratios = Enumerable.Range(0, 300).Select(seed =>
        {
            var fit = Pings(500, 60, 1, (ulong)seed).Fit()!;
            return (fit.RateErrorPpm - 500) / fit.StandardUncertaintyPpm;
        });
        Assert.InRange(Math.Sqrt(ratios.Average(ratio => ratio * ratio)), 0.8, 1.3);
    }

    [Fact]
    public void Fit_PerfectPings_IsExactAndNoBetterKnownThanATickAllows()
    {
        var clock = new RigClockFit(TickHz);
        for (var i = 0; i <= 20; i++)
        {
            clock.Add(new PingReading(i, i, i * TickHz));
        }

        var fit = clock.Fit()!;
        Assert.Equal(0, fit.RateErrorPpm, 1e-6);

        // Slope of 21 points a second apart, each uncertain by a tick's 1/sqrt(12): 62.5 ns / 3.4641 / sqrt(770 s^2).
        Assert.Equal(62.5e-9 / Math.Sqrt(12) / Math.Sqrt(770) * 1e6, fit.StandardUncertaintyPpm, 1e-9);
    }

    [Fact]
    public void Fit_TooFewOrTooShort_IsNotFitted()
    {
        Assert.Null(Pings(0, 7, 5, 1).Fit());
        Assert.Null(Pings(0, 90, 0.1, 1).Fit());
        Assert.Null(new RigClockFit(TickHz).Fit());
    }

    [Fact]
    public void Fit_RateThatNoClockHas_IsNotFitted() => Assert.Null(Pings(400_000, 60, 1, 1).Fit());

    [Fact]
    public void Add_AnswerBeforeTheQuestion_IsRefused() =>
        Assert.Throws<ArgumentException>(() => new RigClockFit(TickHz).Add(new PingReading(2, 1, 0)));

    [Fact]
    public void TickExtension_CounterThatGoesBack_HasWrapped()
    {
        var extension = new TickExtension(32);
        Assert.Equal(
            [0xffff_fff0, 0xffff_fff0, 0x1_0000_0010, 0x1_8000_0000, 0x2_0000_0000],
            new ulong[] { 0xffff_fff0, 0xffff_fff0, 0x10, 0x8000_0000, 0 }.Select(extension.Extend));
    }

    [Fact]
    public void TickExtension_FromAReadingAlreadyExtended_GoesOn() =>
        Assert.Equal(0x5_0000_0002, new TickExtension(32, 0x4_ffff_fffe).Extend(2));

    /// <summary>Pings whose way out and way back take 0.2 ms and an exponential delay of 0.5 ms on top, as on a busy bus.</summary>
    private static RigClockFit Pings(double ppm, int count, double interval, ulong seed)
    {
        var random = new SeededGenerator(seed);
        var clock = new RigClockFit(TickHz);
        for (var i = 0; i < count; i++)
        {
            var sent = 1000 + (i * interval);
            var stamped = sent + Way(random);
            var ticks = (long)(stamped * TickHz * (1 + (ppm / 1e6)));
            clock.Add(new PingReading(sent, stamped + Way(random), ticks));
        }

        return clock;
    }

    private static double Way(SeededGenerator random) => 0.0002 - (0.0005 * Math.Log(1 - random.NextDouble()));
}
