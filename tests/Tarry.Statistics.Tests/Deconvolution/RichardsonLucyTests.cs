using Tarry.Metrology;
using Tarry.Statistics.Deconvolution;

namespace Tarry.Statistics.Tests.Deconvolution;

public sealed class RichardsonLucyTests
{
    private static readonly double[] Weights = [0.1, 0.2, 0.4, 0.2, 0.1];

    // The update as it stands in L. B. Lucy, Astron. J. 79, 745 (1974), written out in numpy.
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(50)]
    public void IterateTo_Counts_AgreesWithNumpy(int iterations)
    {
        var counts = Counts(64);
        var fit = new RichardsonLucy(counts, new ConvolutionKernel(Weights));
        fit.IterateTo(iterations);
        var expected = OutsideProgram.SciPy(
            $"r = np.array([0.1, 0.2, 0.4, 0.2, 0.1]); d = np.ones(60) / 60\nfor _ in range({iterations}):\n  m = np.convolve(d, r)\n  d = d * np.correlate(x / m, r, 'valid') / x.sum()\np(d)",
            counts);
        for (var i = 0; i < expected.Length; i++)
        {
            Close.Absolute(expected[i], fit.Density[i], 1e-11);
        }
    }

    [Fact]
    public void IterateTo_AnyStep_KeepsTheMassAndNeverLowersTheLikelihood()
    {
        var counts = Counts(200);
        var fit = new RichardsonLucy(counts, new ConvolutionKernel(Weights));
        var last = double.NegativeInfinity;
        for (var iterations = 1; iterations <= 300; iterations += 13)
        {
            fit.IterateTo(iterations);
            Close.Absolute(1, fit.Density.ToArray().Sum(), 1e-9);
            Assert.All(fit.Density.ToArray(), mass => Assert.True(mass >= 0));
            var likelihood = fit.Predicted().Select((mass, i) => counts[i] == 0 ? 0 : counts[i] * Math.Log(mass)).Sum();
            Assert.True(likelihood >= last - 1e-9, $"{likelihood} after {iterations} iterations is below {last}");
            last = likelihood;
        }
    }

    [Fact]
    public void IterateTo_FarLumps_AreFoundAsIfAlone()
    {
        var alone = Counts(40);
        double[] both = [.. alone, .. new double[3000], .. alone];
        var (one, two) = (new RichardsonLucy(alone, new ConvolutionKernel(Weights)), new RichardsonLucy(both, new ConvolutionKernel(Weights)));
        one.IterateTo(100);
        two.IterateTo(100);

        // The flat start reaches further beside a gap, so the lumps differ a little at their edges.
        for (var i = 8; i < 28; i++)
        {
            Close.Absolute(two.Density[i], two.Density[i + 3040], 2e-3);
        }

        Close.Absolute(0.5, two.Density[..45].ToArray().Sum(), 1e-9);
        Close.Absolute(0, two.Density[45..3000].ToArray().Sum(), 1e-9);
    }

    private static double[] Counts(int points)
    {
        var generator = new SeededGenerator(31);
        return [.. Enumerable.Range(0, points).Select(_ => 1.0 + generator.NextInt32(40))];
    }
}
