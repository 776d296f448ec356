namespace Tarry.Metrology.Tests;

public sealed class QuantityTests
{
    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void Latency_NotFinite_IsRefusedWithARemedy(double value)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Latency.FromMilliseconds(value));
        Assert.Contains("typed result", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Latency.FromMicroseconds(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => LatencyDifference.FromMilliseconds(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => LatencyDifference.FromMicroseconds(value));
    }

    [Fact]
    public void Latency_Units_Convert()
    {
        var latency = Latency.FromMilliseconds(12.345);
        Assert.Equal(12345, latency.Microseconds, 9);
        Assert.Equal(12.345, latency.Milliseconds);
        Assert.Equal("12.345 ms", latency.ToString());
    }

    [Fact]
    public void Minus_LaterOfTwo_IsPositive()
    {
        var difference = Latency.FromMilliseconds(5).Minus(Latency.FromMilliseconds(3));
        Assert.Equal(2, difference.Milliseconds);
        Assert.Equal("+2.000 ms", difference.ToString());
        Assert.Equal("-0.500 ms", LatencyDifference.FromMilliseconds(-0.5).ToString());
    }

    [Fact]
    public void Latency_Order_IsThatOfTime()
    {
        var (early, late) = (Latency.FromMicroseconds(1), Latency.FromMicroseconds(2));
        Assert.True(early < late && late > early && early <= late && late >= early);
        Assert.True(early.CompareTo(late) < 0);
        var (small, large) = (LatencyDifference.FromMicroseconds(-1), LatencyDifference.FromMicroseconds(1));
        Assert.True(small < large && large > small && small <= large && large >= small);
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(1, true)]
    [InlineData(0.5, true)]
    [InlineData(-1e-12, false)]
    [InlineData(1.0000001, false)]
    [InlineData(double.NaN, false)]
    public void Proportion_AtAndBeyondItsBounds_IsAcceptedOrRefused(double fraction, bool accepted)
    {
        if (accepted)
        {
            Assert.Equal(fraction, Proportion.FromFraction(fraction).Value);
        }
        else
        {
            Assert.Contains("between 0 and 1", Assert.Throws<ArgumentOutOfRangeException>(() => Proportion.FromFraction(fraction)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Proportion_ForPeople_IsInPercent() => Assert.Equal("1.25 %", Proportion.FromFraction(0.0125).ToString());

    [Fact]
    public void Interval_Bounds_AreInside()
    {
        var interval = new Interval<Latency>(Latency.FromMilliseconds(1), Latency.FromMilliseconds(2));
        Assert.True(interval.Contains(interval.Low) && interval.Contains(interval.High));
        Assert.False(interval.Contains(Latency.FromMilliseconds(2.001)));
        Assert.False(interval.Contains(Latency.FromMilliseconds(0.999)));
    }

    [Fact]
    public void Interval_BoundsSwapped_SaysBoth()
    {
        var error = Assert.Throws<ArgumentException>(() => new Interval<Latency>(Latency.FromMilliseconds(2), Latency.FromMilliseconds(1)));
        Assert.Contains("2.000 ms", error.Message, StringComparison.Ordinal);
        Assert.Contains("1.000 ms", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Interval_OfOnePoint_IsAllowed() =>
        Assert.True(new Interval<Proportion>(Proportion.FromFraction(0), Proportion.FromFraction(0)).Contains(Proportion.FromFraction(0)));
}
