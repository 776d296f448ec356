using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Statistics.Tests.SlotGrid;

public sealed class LinePowerTests
{
    [Fact]
    public void Power_OfIrregularTimes_AgreesWithNumPy()
    {
        var part = Line(frequency: 125.3, out var times, out var weights);
        double[] frequencies = [60.1, 125.3, 125.31, 999.7, 8000.5];
        var expected = OutsideProgram.SciPy(
            "n = (x.size - 5) // 2\nm, z, f = x[:n], x[n:2*n], x[2*n:]\np(2 * np.abs(np.exp(-2j * np.pi * np.outer(f, m - m.mean())) @ z) ** 2 / np.sum(z * z))",
            [.. times, .. weights, .. frequencies]);
        for (var i = 0; i < frequencies.Length; i++)
        {
            Assert.Equal(expected[i], LinePower.At([part], frequencies[i]), 1e-6 * Math.Max(1, expected[i]));
        }
    }

    [Fact]
    public void Power_AgreesWithLombsPeriodogram_ToItsPhaseTerm()
    {
        // scipy.signal.lombscargle is |sum z e^(-i w t)|^2/n where the times have no phase of their own: here to a few percent.
        var part = Line(frequency: 125.3, out var times, out var weights);
        var expected = OutsideProgram.SciPy(
            "from scipy import signal\nn = x.size // 2\nm, z = x[:n], x[n:]\np(signal.lombscargle(m, z, 2 * np.pi * np.array([125.3])) * 2 * n / np.sum(z * z))",
            [.. times, .. weights])[0];
        Assert.Equal(expected, LinePower.At([part], 125.3), 0.06 * expected);
    }

    [Fact]
    public void BandSpectrum_NearALine_IsThePowerOfTheDefinition()
    {
        var part = Line(frequency: 130, out _, out _);
        var spectrum = new BandSpectrum(200, 1e-3);
        var first = (int)(128 / spectrum.Step);
        var power = new double[(int)(4 / spectrum.Step)];
        spectrum.Add(part, first, power);
        for (var i = 0; i < power.Length; i += 7)
        {
            var exact = LinePower.At([part], (first + i) * spectrum.Step);
            Assert.Equal(exact, power[i], 0.02 * (1 + exact));
        }
    }

    [Fact]
    public void Zoom_FromWithinACell_FindsTheLine()
    {
        var part = Line(frequency: 125.3, out _, out _);
        var (frequency, _) = LinePower.Zoom([part], 125.302, 200);

        // Cramer-Rao bound of a frequency: sqrt(6/n)/(pi T A/s) is 2.6e-4 Hz here; four of them.
        Assert.Equal(125.3, frequency, 1.04e-3);
    }

    [Theory]
    [InlineData(1, 200, 9950)]
    [InlineData(2, 204, 9950)]
    [InlineData(8, 57, 2000)]
    public void Threshold_IsTheUpperTailOfChiSquared_OfSciPy(int series, double span, double width)
    {
        var expected = OutsideProgram.SciPy($"p(stats.chi2.isf(1e-3 / (2 * {width} * {span}), {2 * series}))", 0)[0];
        Assert.Equal(expected, LineThreshold.Of(series, span, width), 1e-6 * expected);
    }

    private static WeightedTimes Line(double frequency, out double[] times, out double[] weights)
    {
        var random = new SeededGenerator(9);
        times = new double[1000];
        weights = new double[1000];
        var at = 0.0;
        for (var i = 0; i < times.Length; i++)
        {
            at += 0.07 + (0.05 * random.NextDouble());
            times[i] = at;
            weights[i] = Math.Cos(2 * Math.PI * frequency * at) + random.NextNormal();
        }

        return new WeightedTimes(times, weights, times.Length);
    }
}
