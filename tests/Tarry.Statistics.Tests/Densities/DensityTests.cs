using Tarry.Metrology;
using Tarry.Statistics.Densities;

namespace Tarry.Statistics.Tests.Densities;

public sealed class DensityTests
{
    // R 4.2.2, faithful$eruptions: bw.nrd0, bw.SJ(method = "ste"); sums of Gaussian kernels at 2, 3, 4.5.
    [Fact]
    public void Eruptions_BandwidthsAndDensities_AgreeWithR()
    {
        var values = PublishedData.Sorted(OutsideProgram.R("p(faithful$eruptions)"));
        var reference = Bandwidth.NormalReference(values)!.Value;
        Close.Relative(0.334777034464, reference, 1e-11);

        // bw.SJ(x, tol = 1e-9); R's default tolerance stops at 0.140043535894.
        Close.Relative(0.1395463396, Bandwidth.SheatherJones(values)!.Value, 1e-8);

        var broad = KernelDensity.OnGrid(values, 2, 4.5, 6, 0.334777034464);
        Close.Relative(0.341540218346, broad[0], 1e-11);
        Close.Relative(0.0642488565885, broad[2], 1e-11);
        Close.Relative(0.469853495901, broad[5], 1e-11);
        var narrow = KernelDensity.OnGrid(values, 2, 4.5, 6, 0.140043535894);
        Close.Relative(0.492931153168, narrow[0], 1e-9);
        Close.Relative(0.0318437291457, narrow[2], 1e-9);
        Close.Relative(0.589900856375, narrow[5], 1e-9);
    }

    [Fact]
    public void SheatherJones_Latencies_AgreesWithR()
    {
        var generator = new SeededGenerator(89);
        var values = PublishedData.Sorted([.. Enumerable.Range(0, 3000).Select(_ => (8 * generator.NextDouble()) + (4 * generator.NextDouble()) + (0.3 * generator.NextNormal()))]);
        var expected = OutsideProgram.R("p(bw.nrd0(x), bw.SJ(x, method = 'ste', tol = 1e-8))", values);
        Close.Relative(expected[0], Bandwidth.NormalReference(values)!.Value, 1e-11);
        Close.Relative(expected[1], Bandwidth.SheatherJones(values)!.Value, 1e-6);
    }

    [Theory]
    [InlineData(0.001)]
    [InlineData(0.3)]
    [InlineData(40)]
    public void OnGrid_AnyBandwidth_IsTheSumOfKernels(double bandwidth)
    {
        double[] values = [1, 1, 2.5, 7.25, -30, 400];
        var density = KernelDensity.OnGrid(values, 0, 10, 501, bandwidth);
        for (var i = 0; i < density.Length; i += 25)
        {
            var direct = values.Sum(v => Math.Exp(-0.5 * Math.Pow(((i * 0.02) - v) / bandwidth, 2))) / (6 * bandwidth * Math.Sqrt(2 * Math.PI));
            Close.Absolute(direct, density[i], 1e-12 / bandwidth);
        }
    }

    [Fact]
    public void OnGrid_WholeRange_IntegratesToOne()
    {
        var density = KernelDensity.OnGrid(PublishedData.Michelson, 0, 2000, 2001, 20);
        Close.Absolute(1, density.Sum(), 1e-9);
    }

    [Fact]
    public void Bandwidths_EqualValues_AreNotAvailable()
    {
        Assert.Null(Bandwidth.NormalReference([3, 3, 3]));
        Assert.Null(Bandwidth.SheatherJones([3, 3, 3]));
    }

    [Fact]
    public void Histogram_AnyValues_KeepsThemAll()
    {
        var histogram = Histogram.Of([-1, 0, 0.5, 1, 1.99, 2, 3, 50], 0, 1, 3);
        Assert.Equal([2, 2, 1], histogram.Counts);
        Assert.Equal((1, 2), (histogram.Below, histogram.Above));
    }

    [Fact]
    public void OnGrid_NoBandwidth_SaysSo() =>
        Assert.Contains("bandwidth is 0", Assert.Throws<ArgumentOutOfRangeException>(() => KernelDensity.OnGrid([1], 0, 1, 2, 0)).Message, StringComparison.Ordinal);
}
