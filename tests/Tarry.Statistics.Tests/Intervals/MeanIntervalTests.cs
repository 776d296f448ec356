using Tarry.Metrology;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Intervals;

namespace Tarry.Statistics.Tests.Intervals;

public sealed class MeanIntervalTests
{
    // NIST heat-flow data ZARR13 as worked in boostorg/math, doc/distributions/students_t_examples.qbk.
    [Theory]
    [InlineData(0.95, 9.25824, 9.26468)]
    [InlineData(0.99, 9.25721, 9.26571)]
    public void Student_HeatFlow_AgreesAsPrinted(double level, double low, double high) =>
        Close.Limits(low, high, StudentInterval.Of(9.26146, 0.02278881 / Math.Sqrt(195), 194, level), 6e-6);

    // By hand: 40 values 0, 1, 2 ... in 20 batches of two, whose means are 0.5, 2.5 ... 38.5 with sd 2 sd(0..19).
    [Fact]
    public void BatchMeans_Ramp_HasTheStandardErrorOfItsBatches()
    {
        var values = Enumerable.Range(0, 40).Select(v => (double)v).ToArray();
        Close.Relative(2 * Math.Sqrt(35) / Math.Sqrt(20), BatchMeansInterval.StandardError(values), 1e-14);
    }

    // Independent values: nominal coverage, to 4 binomial standard errors. Autoregressive values of 0.5: the plain
    // interval would cover 0.74 (variance inflated 3 times); batches recover it to within the remaining correlation.
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.5, 0.02)]
    public void BatchMeans_ManySessions_Cover(double correlation, double slack)
    {
        const int repetitions = 1000;
        var generator = new SeededGenerator(23);
        var values = new double[600];
        var covered = 0;
        for (var repetition = 0; repetition < repetitions; repetition++)
        {
            var previous = generator.NextNormal();
            for (var i = 0; i < values.Length; i++)
            {
                previous = (correlation * previous) + (Math.Sqrt(1 - (correlation * correlation)) * generator.NextNormal());
                values[i] = previous;
            }

            covered += BatchMeansInterval.Of(values).Contains(0) ? 1 : 0;
        }

        Close.Share(0.95, covered, repetitions, slack);
    }

    [Fact]
    public void BatchMeans_SizesThatDoNotDivide_UseEveryValue()
    {
        // Only the last value differs; were the remainder cut off, the standard error would be 0.
        var values = new double[47];
        values[^1] = 1;
        Assert.True(BatchMeansInterval.StandardError(values) > 0);
        Close.Absolute(Moments.Mean(values), 0.5 * (BatchMeansInterval.Of(values).Low + BatchMeansInterval.Of(values).High), 1e-15);
    }

    [Fact]
    public void BatchMeans_TooFewValues_SaysHowMany() =>
        Assert.Contains("at least 40", Assert.Throws<ArgumentException>(() => BatchMeansInterval.Of(new double[39])).Message, StringComparison.Ordinal);
}
