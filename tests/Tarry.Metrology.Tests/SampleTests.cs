namespace Tarry.Metrology.Tests;

public sealed class SampleTests
{
    [Fact]
    public void Sample_AnyOrder_KeepsTheOrderAndSortsACopy()
    {
        double[] values = [3, 1, 2];
        var sample = new Sample(values, missed: 4);
        values[0] = 99;
        Assert.Equal([3, 1, 2], sample.InOrder.ToArray());
        Assert.Equal([1, 2, 3], sample.Sorted.ToArray());
        Assert.Equal((3, 4), (sample.Count, sample.Missed));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Sample_NotFinite_SaysWhereAndToCountItAsMissed(double value)
    {
        var error = Assert.Throws<ArgumentException>(() => new Sample([1, 2, value]));
        Assert.Contains("Value 2", error.Message, StringComparison.Ordinal);
        Assert.Contains("missed", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Sample_NegativeMisses_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Sample([1], missed: -1));

    [Fact]
    public void Sample_Empty_IsAllowed() => Assert.Equal(0, new Sample([]).Count);
}
