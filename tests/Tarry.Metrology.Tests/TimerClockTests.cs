namespace Tarry.Metrology.Tests;

public sealed class TimerClockTests
{
    // By arithmetic: 16 MHz is 16 ticks a microsecond; a timer 100 ppm fast counts 100 ppm more ticks in the same time.
    [Theory]
    [InlineData(16_000_000, 0, 16, 1)]
    [InlineData(250_000, 0, 1, 4)]
    [InlineData(1_000_000, 100, 1_000_100, 1_000_000)]
    [InlineData(1_000_000, -100, 999_900, 1_000_000)]
    public void ToMicroseconds_KnownRates_AreExact(long hertz, double ppm, long ticks, double microseconds)
    {
        var clock = new TimerClock(hertz, ppm);
        Assert.Equal(microseconds, clock.ToMicroseconds(ticks), 6);
        Assert.Equal(ticks, clock.ToTicks(microseconds));
        Assert.Equal(microseconds, Latency.FromTicks(ticks, clock).Microseconds, 6);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(123_456_789)]
    [InlineData(4_000_000_000_000)]
    public void ToTicks_OfTicks_ReturnsThem(long ticks)
    {
        var clock = new TimerClock(16_000_000, 37.5);
        Assert.Equal(ticks, clock.ToTicks(clock.ToMicroseconds(ticks)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void Clock_NoFrequency_SaysWhatToCheck(long hertz) =>
        Assert.Contains("tick_hz", Assert.Throws<ArgumentOutOfRangeException>(() => new TimerClock(hertz)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(100_000, true)]
    [InlineData(-100_000, true)]
    [InlineData(100_001, false)]
    [InlineData(double.NaN, false)]
    public void Clock_RateErrorAtAndBeyondItsBounds_IsAcceptedOrRefused(double ppm, bool accepted)
    {
        if (accepted)
        {
            Assert.Equal(ppm, new TimerClock(1, ppm).RateErrorPpm);
        }
        else
        {
            Assert.Contains("100,000 ppm", Assert.Throws<ArgumentOutOfRangeException>(() => new TimerClock(1, ppm)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Clock_ForPeople_ShowsFrequencyAndError() =>
        Assert.Equal("16000000 Hz +12.5 ppm", new TimerClock(16_000_000, 12.5).ToString());
}
