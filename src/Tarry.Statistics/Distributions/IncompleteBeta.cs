namespace Tarry.Statistics.Distributions;

/// <summary>
/// The regularised incomplete beta function I_x(a, b), for parameters up to millions: the continued fraction
/// (NIST DLMF 8.17.22) with as many terms as it takes, behind a saddle-point factor.
/// </summary>
/// <remarks>Common libraries stop the fraction after a fixed number of terms, which is wrong for binomials of 10^5 trials and more.</remarks>
internal static class IncompleteBeta
{
    private const double Tiny = 1e-300;

    /// <summary>I_x(a, b), with the complement y = 1 - x given apart so that neither loses digits.</summary>
    public static double Of(double a, double b, double x, double y)
    {
        if (x <= 0)
        {
            return 0;
        }

        if (y <= 0)
        {
            return 1;
        }

        // x^a y^b / B(a, b)
        var factor = a * (b / (a + b)) * BinomialTerm.Of(a, a + b, x, y);
        return x <= (a + 1) / (a + b + 2)
            ? factor / a * Fraction(a, b, x)
            : 1 - (factor / b * Fraction(b, a, y));
    }

    /// <summary>The derivative of I_x(a, b) in x.</summary>
    public static double Density(double a, double b, double x, double y) =>
        a * (b / (a + b)) * BinomialTerm.Of(a, a + b, x, y) / (x * y);

    private static double Fraction(double a, double b, double x)
    {
        var c = 1.0;
        var d = 1 / Away(1 - ((a + b) * x / (a + 1)));
        var result = d;
        for (var m = 1; m < 1_000_000; m++)
        {
            var even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            d = 1 / Away(1 + (even * d));
            c = Away(1 + (even / c));
            result *= d * c;
            var odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            d = 1 / Away(1 + (odd * d));
            c = Away(1 + (odd / c));
            var step = d * c;
            result *= step;
            if (Math.Abs(step - 1) < 1e-15)
            {
                break;
            }
        }

        return result;
    }

    private static double Away(double value) => Math.Abs(value) < Tiny ? Tiny : value;
}
