using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Shapes;

/// <summary>The normal distribution function by a table and a Taylor series from the nearest entry: what fits call most.</summary>
/// <remarks>
/// Entries 1/64 apart; five terms of the series leave an error below 1e-15. Far in the lower tail, where digits matter relative to
/// the value, the exact function is called.
/// </remarks>
internal static class NormalTable
{
    private const double Reach = 6;
    private const int PerUnit = 64;
    private static readonly double[] Cumulative = Entries(NormalDistribution.Cdf);
    private static readonly double[] Densities = Entries(NormalDistribution.Density);

    /// <summary>Phi(u) and phi(u).</summary>
    public static (double Cumulative, double Density) At(double u)
    {
        if (!(u > -Reach && u < Reach))
        {
            return (NormalDistribution.Cdf(u), NormalDistribution.Density(u));
        }

        var entry = (int)(((u + Reach) * PerUnit) + 0.5);
        var x = ((double)entry / PerUnit) - Reach;
        var d = u - x;
        var density = Densities[entry];

        // Derivatives of phi are Hermite polynomials times phi.
        var x2 = x * x;
        var h1 = -x;
        var h2 = x2 - 1;
        var h3 = -x * (x2 - 3);
        var h4 = (x2 * (x2 - 6)) + 3;
        var h5 = -x * ((x2 * (x2 - 10)) + 15);
        var series = 1 + (d * ((h1 / 2) + (d * ((h2 / 6) + (d * ((h3 / 24) + (d * ((h4 / 120) + (d * h5 / 720)))))))));
        var slope = 1 + (d * (h1 + (d * ((h2 / 2) + (d * ((h3 / 6) + (d * ((h4 / 24) + (d * h5 / 120)))))))));
        return (Cumulative[entry] + (density * d * series), density * slope);
    }

    private static double[] Entries(Func<double, double> function)
    {
        var entries = new double[(2 * (int)Reach * PerUnit) + 1];
        for (var i = 0; i < entries.Length; i++)
        {
            entries[i] = function(((double)i / PerUnit) - Reach);
        }

        return entries;
    }
}
