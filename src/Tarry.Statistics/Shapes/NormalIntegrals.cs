namespace Tarry.Statistics.Shapes;

/// <summary>Repeated integrals of the standard normal distribution, and the scaled complementary error function.</summary>
internal static class NormalIntegrals
{
    // Beyond these the normal cdf is 0 or 1 to the last bit of a double.
    private const double LowestMattering = -38;
    private const double HighestMattering = 8.3;
    private const double InverseRootPi = 0.56418958354775628695;

    /// <summary>G(u) = u Phi(u) + phi(u), the integral of the normal cdf up to u.</summary>
    public static double First(double u)
    {
        if (u < LowestMattering || u > HighestMattering)
        {
            return Math.Max(0, u);
        }

        var (cumulative, density) = NormalTable.At(u);
        return Math.Max(0, (u * cumulative) + density);
    }

    /// <summary>H(u) = ((u^2 + 1) Phi(u) + u phi(u))/2, the integral of G up to u.</summary>
    public static double Second(double u)
    {
        if (u < LowestMattering || u > HighestMattering)
        {
            return u < 0 ? 0 : 0.5 * ((u * u) + 1);
        }

        var (cumulative, density) = NormalTable.At(u);
        return Math.Max(0, 0.5 * ((((u * u) + 1) * cumulative) + (u * density)));
    }

    /// <summary>erfcx(x) = exp(x^2) erfc(x), for x of -5 and above; without overflow or underflow.</summary>
    public static double ScaledComplementaryError(double x)
    {
        if (x < 10)
        {
            return Math.Exp(x * x) * MathNet.Numerics.SpecialFunctions.Erfc(x);
        }

        // Asymptotic series (Abramowitz and Stegun 7.1.23): at 10 the twelfth term is below 1e-14.
        var term = 1.0;
        var sum = 1.0;
        for (var k = 1; k <= 12; k++)
        {
            term *= -((2 * k) - 1) / (2 * x * x);
            sum += term;
        }

        return InverseRootPi * sum / x;
    }
}
