using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Tests.Deconvolution;

public sealed class WassersteinTests
{
    // SciPy, scipy.stats.wasserstein_distance; N(0, 1) against N(0, 2): sqrt(2/pi).
    [Fact]
    public void Distance_ReferenceValues_Agree()
    {
        Close.Absolute(3.5, Wasserstein.Samples([1, 2, 3, 4], [2, 3, 5, 9, 11]), 1e-12);
        Close.Absolute(5, Wasserstein.Samples([0, 1, 3], [5, 6, 8]), 1e-12);
        Close.Absolute(0.7978845608, Wasserstein.Functions(NormalDistribution.Cdf, x => NormalDistribution.Cdf(x / 2), -20, 20, 40_000), 1e-6);
    }

    [Fact]
    public void Density_OfAUniform_AgreesWithItsSample()
    {
        double[] sample = [.. Enumerable.Range(0, 100_000).Select(i => (i + 0.5) / 100_000)];
        Close.Absolute(0, Wasserstein.Density(0.05, 0.1, [1, 1, 1, 1, 1, 1, 1, 1, 1, 1], sample), 1e-5);
        Close.Absolute(0.3, Wasserstein.Density(0.35, 0.1, [1, 1, 1, 1, 1, 1, 1, 1, 1, 1], sample), 1e-3);
    }
}
