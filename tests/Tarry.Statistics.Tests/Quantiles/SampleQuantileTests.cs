using Tarry.Metrology;
using Tarry.Statistics.Quantiles;

namespace Tarry.Statistics.Tests.Quantiles;

public sealed class SampleQuantileTests
{
    // R 4.2.2: quantile(x, p, type =) of Student's sleep data.
    [Theory]
    [InlineData(6, new[] { -1.58, -0.075, 0.95, 3.4, 5.455, 5.5 })]
    [InlineData(7, new[] { -1.22, -0.025, 0.95, 3.4, 4.645, 5.329 })]
    [InlineData(8, new[] { -1.46, -0.0583333333333333, 0.95, 3.4, 5.185, 5.5 })]
    public void Of_SleepData_AgreesWithR(int type, double[] expected)
    {
        double[] levels = [0.05, 0.25, 0.5, 0.75, 0.95, 0.99];
        for (var i = 0; i < levels.Length; i++)
        {
            Close.Absolute(expected[i], SampleQuantile.Of(PublishedData.Sorted(PublishedData.Sleep), levels[i], type: (QuantileType)type)!.Value, 1e-12);
        }
    }

    // R: the other types at 0.95.
    [Theory]
    [InlineData(1, 4.6)]
    [InlineData(2, 5.05)]
    [InlineData(3, 4.6)]
    [InlineData(4, 4.6)]
    [InlineData(5, 5.05)]
    [InlineData(9, 5.15125)]
    public void Of_SleepDataAt95_AgreesWithR(int type, double expected) =>
        Close.Absolute(expected, SampleQuantile.Of(PublishedData.Sorted(PublishedData.Sleep), 0.95, type: (QuantileType)type)!.Value, 1e-12);

    // R: quantile(morley$Speed, p, type = 7 and 8).
    [Theory]
    [InlineData(7, new[] { 739, 807.5, 850, 892.5, 980, 1000.7 })]
    [InlineData(8, new[] { 727, 804.166666666667, 850, 895.833333333333, 980, 1046.43333333333 })]
    public void Of_Michelson_AgreesWithR(int type, double[] expected)
    {
        double[] levels = [0.05, 0.25, 0.5, 0.75, 0.95, 0.99];
        for (var i = 0; i < levels.Length; i++)
        {
            Close.Relative(expected[i], SampleQuantile.Of(PublishedData.Sorted(PublishedData.Michelson), levels[i], type: (QuantileType)type)!.Value, 1e-12);
        }
    }

    [Fact]
    public void Of_EveryTypeAtManyLevels_AgreesWithR()
    {
        var generator = new SeededGenerator(5);
        var values = PublishedData.Sorted([.. Enumerable.Range(0, 60).Select(_ => Math.Round(generator.NextNormal(), 1))]);
        var expected = OutsideProgram.R("for (n in c(1,2,7,60)) for (t in 1:9) p(quantile(head(x, n), (0:20)/20, type = t, names = FALSE))", values);
        var i = 0;
        foreach (var n in (int[])[1, 2, 7, 60])
        {
            for (var type = 1; type <= 9; type++)
            {
                for (var k = 0; k <= 20; k++)
                {
                    Close.Absolute(expected[i++], SampleQuantile.Of(values.AsSpan(0, n), k / 20.0, type: (QuantileType)type)!.Value, 1e-12);
                }
            }
        }
    }

    // 10 trials, of which 2 missed: the median lies between responses 5 and 6, p80 needs trial 9.
    [Fact]
    public void Of_WithMisses_CountsThemAsLaterThanEveryResponse()
    {
        double[] sorted = [1, 2, 3, 4, 5, 6, 7, 8];
        Assert.Equal(5.5, SampleQuantile.Of(sorted, 0.5, missed: 2));
        Assert.Equal(8, SampleQuantile.Of(sorted, 7.0 / 9, missed: 2));
        Assert.Null(SampleQuantile.Of(sorted, 0.8, missed: 2));
        Assert.Null(SampleQuantile.Of(sorted, 1, missed: 1));
    }

    [Fact]
    public void Of_NothingButMisses_IsNotAvailable()
    {
        Assert.Null(SampleQuantile.Of([], 0.5, missed: 3));
        Assert.Null(SampleQuantile.Of([], 0.5));
    }

    [Theory]
    [InlineData(-0.01)]
    [InlineData(95)]
    [InlineData(double.NaN)]
    public void Of_LevelOutOfRange_SaysTheRange(double level) =>
        Assert.Contains("between 0 and 1", Assert.Throws<ArgumentOutOfRangeException>(() => SampleQuantile.Of([1], level)).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_Unsorted_SaysToSort() =>
        Assert.Contains("sort", Assert.Throws<ArgumentException>(() => SampleQuantile.Of([2, 1], 0.5)).Message, StringComparison.Ordinal);
}
