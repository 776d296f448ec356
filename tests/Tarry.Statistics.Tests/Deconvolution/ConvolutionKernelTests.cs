using Tarry.Metrology;
using Tarry.Statistics.Deconvolution;

namespace Tarry.Statistics.Tests.Deconvolution;

public sealed class ConvolutionKernelTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(3, 2)]
    [InlineData(15, 4)]
    [InlineData(16, 5)]
    [InlineData(17, 31)]
    [InlineData(360, 80)]
    [InlineData(1, 80)]
    public void Convolve_AnyLengths_AgreesWithNumpy(int values, int weights)
    {
        var generator = new SeededGenerator((ulong)(values * 1000) + (ulong)weights);
        double[] inputs = [.. Enumerable.Range(0, values + weights).Select(i => i % 7 == 3 ? 0 : generator.NextNormal())];
        var expected = OutsideProgram.SciPy($"p(np.convolve(x[:{values}], x[{values}:]), np.correlate(np.concatenate([x[:{values}], np.zeros({weights - 1})]), x[{values}:], 'valid'))", inputs);

        var kernel = new ConvolutionKernel(inputs.AsSpan(values));
        var convolved = kernel.Convolve(inputs.AsSpan(0, values));
        double[] padded = [.. inputs[..values], .. new double[weights - 1]];
        var correlated = new double[values];
        kernel.Correlate(padded, correlated);
        double[] actual = [.. convolved, .. correlated];
        Assert.Equal(expected.Length, actual.Length);
        for (var i = 0; i < actual.Length; i++)
        {
            Close.Absolute(expected[i], actual[i], 1e-12);
        }
    }

    [Fact]
    public void Correlate_LengthsThatDoNotFit_AreRefused() =>
        Assert.Throws<ArgumentException>(() => new ConvolutionKernel([1, 2, 3]).Correlate(new double[5], new double[4]));
}
