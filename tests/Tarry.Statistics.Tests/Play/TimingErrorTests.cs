using Tarry.Statistics.Distributions;
using Tarry.Statistics.Play;

namespace Tarry.Statistics.Tests.Play;

/// <summary>Closed forms of E|X - median|.</summary>
public class TimingErrorTests
{
    // N(0, sigma): sigma sqrt(2/pi). U(0, T): T/4. U + U of equal T: T/3. Exponential of mean 1: ln 2.
    [Fact]
    public void MeanAbsolute_KnownDistributions_AgreesWithTheirClosedForms()
    {
        Close.Absolute(3 * Math.Sqrt(2 / Math.PI), AboutMedian(p => 3 * NormalDistribution.Quantile(p)), 1e-3);
        Close.Absolute(8 / 4.0, AboutMedian(p => 8 * p), 1e-6);
        Close.Absolute(8 / 3.0, AboutMedian(p => p < 0.5 ? 8 * Math.Sqrt(2 * p) : 16 - (8 * Math.Sqrt(2 * (1 - p)))), 1e-4);
        Close.Absolute(Math.Log(2), AboutMedian(p => -Math.Log(1 - p)), 1e-3);
    }

    // U(0, 8) + N(0, 1): 2.124999227, by numerical quadrature (R 4.2.2, integrate).
    [Fact]
    public void MeanAbsolute_UniformWithPlayer_AgreesWithQuadrature() =>
        Close.Absolute(2.124999227, TimingError.MeanAbsolute(Quantiles(p => 8 * p), 4, 1), 1e-6);

    [Fact]
    public void MeanAbsolute_ConstantWithPlayer_IsThePlayersOwn() =>
        Close.Relative(10 * Math.Sqrt(2 / Math.PI), TimingError.MeanAbsolute([12, 12], 12, 10), 1e-14);

    private static double AboutMedian(Func<double, double> quantile)
    {
        var values = Quantiles(quantile);
        var median = new HitProbability([new TimingSession(values)]).Median;
        return TimingError.MeanAbsolute(values, median);
    }

    private static double[] Quantiles(Func<double, double> quantile) => [.. Enumerable.Range(0, 20000).Select(i => quantile((i + 0.5) / 20000))];
}
