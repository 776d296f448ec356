using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Statistics.Tests.SlotGrid;

public sealed class FourierTransformTests
{
    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(8)]
    [InlineData(32)]
    [InlineData(256)]
    public void Transform_OfRandomNumbers_IsTheSumOfItsDefinition(int size)
    {
        var (re, im) = Random(size);
        var (foundRe, foundIm) = Transformed(re, im);
        for (var k = 0; k < size; k++)
        {
            var (x, y) = (0.0, 0.0);
            for (var j = 0; j < size; j++)
            {
                var (sine, cosine) = Math.SinCos(-2 * Math.PI * j * k / size);
                x += (re[j] * cosine) - (im[j] * sine);
                y += (re[j] * sine) + (im[j] * cosine);
            }

            Assert.Equal(x, foundRe[k], 1e-5 * size);
            Assert.Equal(y, foundIm[k], 1e-5 * size);
        }
    }

    [Fact]
    public void Transform_OfRandomNumbers_AgreesWithSciPy()
    {
        const int size = 4096;
        var (re, im) = Random(size);
        var expected = OutsideProgram.SciPy(
            $"from scipy import fft\nX = fft.fft(x[:{size}] + 1j * x[{size}:])\np(X.real, X.imag)",
            [.. re.Select(value => (double)value), .. im.Select(value => (double)value)]);
        var (foundRe, foundIm) = Transformed(re, im);
        for (var k = 0; k < size; k++)
        {
            Assert.Equal(expected[k], foundRe[k], 1e-3);
            Assert.Equal(expected[size + k], foundIm[k], 1e-3);
        }
    }

    private static (float[] Re, float[] Im) Random(int size)
    {
        var random = new SeededGenerator(5);
        return ([.. Enumerable.Range(0, size).Select(_ => (float)random.NextNormal())], [.. Enumerable.Range(0, size).Select(_ => (float)random.NextNormal())]);
    }

    private static (float[] Re, float[] Im) Transformed(float[] re, float[] im)
    {
        var (a, b, c, d) = ((float[])re.Clone(), (float[])im.Clone(), new float[re.Length], new float[re.Length]);
        FourierTransform.OfSize(re.Length).Forward(ref a, ref b, ref c, ref d);
        return (a, b);
    }
}
