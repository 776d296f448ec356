using Tarry.Metrology;
using Tarry.Reports.Figures;

namespace Tarry.Reports.Tests.Figures;

public sealed class TicksTests
{
    [Fact]
    public void Cover_AnyRange_IsCoveredByEvenRoundSteps()
    {
        var random = new SeededGenerator(7);
        for (var round = 0; round < 2000; round++)
        {
            var low = (random.NextDouble() - 0.3) * Math.Pow(10, random.NextInt32(7) - 3);
            var high = low + (Math.Pow(10, random.NextInt32(7) - 3) * (0.1 + random.NextDouble()));
            var about = 2 + random.NextInt32(9);
            var ticks = Ticks.Cover(low, high, about);
            var step = ticks.Values[1] - ticks.Values[0];
            Assert.True(ticks.Low <= low + (step * 1e-6) && ticks.High >= high - (step * 1e-6), $"{low} to {high} by {about}");
            Assert.True(ticks.Low > low - (step * 1.000001) && ticks.High < high + (step * 1.000001), "no tick further out than a step");
            Assert.InRange(ticks.Values.Count, 2, about + 3);
            var mantissa = step / Math.Pow(10, Math.Floor(Math.Log10(step * 1.000001)));
            Assert.Contains(new[] { 1.0, 2, 5 }, round => Math.Abs(round - mantissa) < 1e-6);
            Assert.All(ticks.Values.Zip(ticks.Values.Skip(1)), pair => Assert.Equal(step, pair.Second - pair.First, step * 1e-6));
        }
    }

    [Fact]
    public void Cover_DecimalSteps_GivesExactDecimals() => Assert.Equal([0.0, 0.1, 0.2, 0.3], Ticks.Cover(0, 0.3, 3).Values);

    [Theory]
    [InlineData(5, 5)]
    [InlineData(5, 4)]
    public void Cover_NoRange_IsWidened(double low, double high)
    {
        var ticks = Ticks.Cover(low, high, 4);
        Assert.True(ticks.Low < 5 && ticks.High > 4);
        Assert.True(ticks.Values.Count >= 2);
    }

    [Fact]
    public void Inside_LogarithmicRange_GivesOneTwoFive() => Assert.Equal([5.0, 10, 20, 50, 100], LogarithmicTicks.Inside(3, 100, 8));

    [Fact]
    public void Inside_LittleRoom_IsThinned() => Assert.Equal([5.0, 20, 100], LogarithmicTicks.Inside(3, 100, 3));

    [Fact]
    public void Inside_LogarithmicRangeBetweenOneTwoFive_GivesHalves() => Assert.Equal([35.0, 40], LogarithmicTicks.Inside(33, 44, 8));
}
