using MathNet.Numerics;

namespace Tarry.Statistics.Distributions;

/// <summary>
/// The binomial probability n!/(x!(n-x)!) p^x q^(n-x), also for a real x and n, by the saddle-point form
/// (C. Loader, "Fast and accurate computation of binomial probabilities", 2000): no cancellation at large n.
/// </summary>
internal static class BinomialTerm
{
    private const double LogTwoPi = 1.8378770664093454836;

    public static double Of(double x, double n, double p, double q)
    {
        if (x <= 0)
        {
            return x == 0 ? Math.Exp(n * LogOf(p, q)) : 0;
        }

        if (x >= n)
        {
            return x == n ? Math.Exp(n * LogOf(q, p)) : 0;
        }

        if (p <= 0 || q <= 0)
        {
            return 0;
        }

        var exponent = StirlingError(n) - StirlingError(x) - StirlingError(n - x) - Deviance(x, n * p) - Deviance(n - x, n * q);
        return Math.Exp(exponent - (0.5 * (LogTwoPi + Math.Log(x) + Math.Log((n - x) / n))));
    }

    /// <summary>ln of the complement of a share, from whichever of the two is the smaller.</summary>
    private static double LogOf(double share, double complement) =>
        share < complement ? SpecialFunctions.Log1p(-share) : Math.Log(complement);

    /// <summary>ln z! - (z + 1/2) ln z + z - ln sqrt(2 pi).</summary>
    private static double StirlingError(double z)
    {
        if (z <= 15)
        {
            return SpecialFunctions.GammaLn(z + 1) - ((z + 0.5) * Math.Log(z)) + z - (0.5 * LogTwoPi);
        }

        var square = z * z;
        return ((1.0 / 12) - (((1.0 / 360) - (((1.0 / 1260) - (((1.0 / 1680) - (1.0 / 1188 / square)) / square)) / square)) / square)) / z;
    }

    /// <summary>x ln(x/m) + m - x, by its series where x is near m.</summary>
    private static double Deviance(double x, double m)
    {
        if (Math.Abs(x - m) >= 0.1 * (x + m))
        {
            return (x * Math.Log(x / m)) + m - x;
        }

        var v = (x - m) / (x + m);
        var sum = (x - m) * v;
        var term = 2 * x * v;
        for (var j = 1; ; j++)
        {
            term *= v * v;
            var next = sum + (term / ((2 * j) + 1));
            if (next == sum)
            {
                return next;
            }

            sum = next;
        }
    }
}
