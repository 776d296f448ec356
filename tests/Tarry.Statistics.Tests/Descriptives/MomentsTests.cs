using Tarry.Metrology;
using Tarry.Statistics.Descriptives;

namespace Tarry.Statistics.Tests.Descriptives;

/// <summary>NIST StRD univariate summary statistics, certified values (https://www.itl.nist.gov/div898/strd/univ/homepage.html).</summary>
public sealed class MomentsTests
{
    // As printed to 15 digits.
    [Fact]
    public void Lew_CertifiedValues_AreMet() =>
        Certified(PublishedData.Lew, -177.435, 277.332168044316, -0.307304800605679, 1e-13, 1e-12);

    [Fact]
    public void Mavro_CertifiedValues_AreMet() =>
        Certified(PublishedData.Mavro, 2.001856, 0.000429123454003053, 0.937989183438248, 1e-12, 1e-10);

    [Fact]
    public void Michelso_CertifiedValues_AreMet() =>
        Certified([.. PublishedData.Michelson.Select(v => 299 + (v / 1000))], 299.8524, 0.0790105478190518, 0.535199668621283, 1e-12, 1e-10);

    [Fact]
    public void NumAcc1_CertifiedValues_AreMet() => Certified([10000001, 10000003, 10000002], 10000002, 1, -0.5, 0, 0);

    // NumAcc2..4 alternate about the mean by 0.1; a double holds the inputs of NumAcc3 and 4 only to 1e-9 and 1e-8 of it.
    [Theory]
    [InlineData(1.2, 1e-14, 1e-13)]
    [InlineData(1000000.2, 1e-14, 1e-9)]
    [InlineData(10000000.2, 1e-14, 1e-8)]
    public void NumAcc234_CertifiedValues_AreMet(double mean, double meanTolerance, double deviationTolerance)
    {
        var values = new double[1001];
        values[0] = mean;
        for (var i = 1; i < values.Length; i++)
        {
            values[i] = Math.Round(mean + (i % 2 == 1 ? -0.1 : 0.1), 1);
        }

        Certified(values, mean, 0.1, -0.999, meanTolerance, deviationTolerance);
    }

    // R: acf(x, plot = FALSE) at lags 1 to 3.
    [Fact]
    public void Autocorrelation_Lew_AgreesWithR()
    {
        Close.Relative(-0.307304800606, Autocorrelation.AtLag(PublishedData.Lew, 1), 1e-11);
        Close.Relative(-0.740350266185, Autocorrelation.AtLag(PublishedData.Lew, 2), 1e-11);
        Close.Relative(0.77468922534, Autocorrelation.AtLag(PublishedData.Lew, 3), 1e-11);
    }

    [Fact]
    public void Moments_ShiftedAndScaled_ShiftAndScale()
    {
        var generator = new SeededGenerator(3);
        var values = Enumerable.Range(0, 500).Select(_ => generator.NextNormal()).ToArray();
        var moved = values.Select(v => 40 - (3 * v)).ToArray();
        Close.Relative(40 - (3 * Moments.Mean(values)), Moments.Mean(moved), 1e-13);
        Close.Relative(3 * Moments.StandardDeviation(values), Moments.StandardDeviation(moved), 1e-13);
        Close.Relative(Autocorrelation.AtLag(values, 2), Autocorrelation.AtLag(moved, 2), 1e-10);
    }

    [Fact]
    public void StandardDeviation_OneValue_SaysHowManyAreNeeded()
    {
        var error = Assert.Throws<ArgumentException>(() => Moments.StandardDeviation([1]));
        Assert.Contains("holds 1 values; at least 2", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Mean_NotFinite_SaysWhereAndWhatToDo()
    {
        var error = Assert.Throws<ArgumentException>(() => Moments.Mean([1, double.NaN]));
        Assert.Contains("values[1] is NaN", error.Message, StringComparison.Ordinal);
        Assert.Contains("missed", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Autocorrelation_ConstantValues_SaysSo() =>
        Assert.Contains("same", Assert.Throws<ArgumentException>(() => Autocorrelation.AtLag([2, 2, 2], 1)).Message, StringComparison.Ordinal);

    private static void Certified(double[] values, double mean, double deviation, double r1, double meanTolerance, double deviationTolerance)
    {
        Close.Relative(mean, Moments.Mean(values), meanTolerance);
        Close.Relative(deviation, Moments.StandardDeviation(values), deviationTolerance);
        Close.Relative(r1, Autocorrelation.AtLag(values, 1), Math.Max(1e-12, deviationTolerance));
    }
}
