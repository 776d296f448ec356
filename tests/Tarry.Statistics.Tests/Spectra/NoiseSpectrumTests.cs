using Tarry.Metrology;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Spectra;

namespace Tarry.Statistics.Tests.Spectra;

public class NoiseSpectrumTests
{
    [Fact]
    public void Of_Noise_AgreesWithSciPy()
    {
        var random = new SeededGenerator(7);
        double[] values = [.. Enumerable.Range(0, 4_000).Select(i => random.NextNormal() + Math.Sin(i * 0.7))];
        var spectrum = NoiseSpectrum.Of(values, 500, 256)!;
        var expected = OutsideProgram.SciPy("from scipy import signal\nf, d = signal.welch(x, 500, 'hann', 256)\np(d[1:])", values);
        Assert.Equal(500.0 / 256, spectrum.StepHz);
        Assert.All(expected.Zip(spectrum.Density), pair => Assert.Equal(pair.First, pair.Second, 1e-5 * expected.Max()));
    }

    [Fact]
    public void Of_WhiteNoise_AddsUpToTheVariance()
    {
        var random = new SeededGenerator(8);
        double[] values = [.. Enumerable.Range(0, 65_536).Select(_ => 3 * random.NextNormal())];
        var spectrum = NoiseSpectrum.Of(values, 1_000)!;
        Assert.InRange(spectrum.Density.Sum() * spectrum.StepHz / Moments.Variance(values), 0.98, 1.02);
    }

    [Fact]
    public void Line_OfHumInNoise_IsFoundWithItsAmplitude()
    {
        var random = new SeededGenerator(9);
        double[] values = [.. Enumerable.Range(0, 60_000).Select(i => random.NextNormal() + (0.5 * Math.Sin(2 * Math.PI * 50 * i / 1_000.0)))];
        var line = NoiseLine.Of(NoiseSpectrum.Of(values, 1_000)!)!.Value;
        Assert.Equal(50, line.FrequencyHz, 0.25);
        Assert.Equal(0.5 / Math.Sqrt(2), line.Amplitude, 0.02);
        Assert.True(line.P < 1e-9);
    }

    [Fact]
    public void Line_OfNoiseAlone_IsSignificantInNoMoreThanItsShare()
    {
        // 200 spectra at the 5 % level: up to 18 with a chance of 0.995 (binomial).
        var found = Enumerable.Range(0, 200).Count(seed =>
        {
            var random = new SeededGenerator((ulong)(1_000 + seed));
            double[] values = [.. Enumerable.Range(0, 8_192).Select(_ => random.NextNormal())];
            return NoiseLine.Of(NoiseSpectrum.Of(values, 1_000, 512)!)!.Value.P < 0.05;
        });
        Assert.InRange(found, 0, 18);
    }

    [Fact]
    public void Of_TooFewValues_IsNone() => Assert.Null(NoiseSpectrum.Of(new double[200], 1_000));
}
