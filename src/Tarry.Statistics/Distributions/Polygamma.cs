using MathNet.Numerics;

namespace Tarry.Statistics.Distributions;

/// <summary>The first derivatives of the logarithm of the gamma function, and the inverse that a prior on variances needs.</summary>
public static class Polygamma
{
    /// <summary>The first derivative.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite and above 0.</exception>
    public static double Digamma(double x)
    {
        Argument.RequirePositive(x, nameof(x));
        return SpecialFunctions.DiGamma(x);
    }

    /// <summary>The second derivative: recurrence up to 15, then the asymptotic series (NIST DLMF 5.15.8).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite and above 0.</exception>
    public static double Trigamma(double x)
    {
        Argument.RequirePositive(x, nameof(x));
        var sum = 0.0;
        for (; x < 15; x++)
        {
            sum += 1 / (x * x);
        }

        var r = 1 / x;
        var s = r * r;
        return sum + r + (0.5 * s) + (r * s * ((1.0 / 6) - (s * ((1.0 / 30) - (s * ((1.0 / 42) - (s * ((1.0 / 30) - (s * (5.0 / 66))))))))));
    }

    /// <summary>The third derivative, by the same route.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite and above 0.</exception>
    public static double Tetragamma(double x)
    {
        Argument.RequirePositive(x, nameof(x));
        var sum = 0.0;
        for (; x < 15; x++)
        {
            sum -= 2 / (x * x * x);
        }

        var r = 1 / x;
        var s = r * r;
        return sum - s - (r * s) - (s * s * (0.5 - (s * ((1.0 / 6) - (s * ((1.0 / 6) - (s * ((3.0 / 10) - (s * (5.0 / 6))))))))));
    }

    /// <summary>The x at which <see cref="Trigamma"/> is <paramref name="y"/> (G. K. Smyth, 2004, appendix: Newton on 1/trigamma).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="y"/> is not finite and above 0.</exception>
    public static double InverseTrigamma(double y)
    {
        Argument.RequirePositive(y, nameof(y));
        if (y > 1e7)
        {
            return 1 / Math.Sqrt(y);
        }

        if (y < 1e-6)
        {
            return 1 / y;
        }

        var x = 0.5 + (1 / y);
        for (var i = 0; i < 50; i++)
        {
            var value = Trigamma(x);
            var step = value * (1 - (value / y)) / Tetragamma(x);
            x += step;
            if (-step / x < 1e-12)
            {
                break;
            }
        }

        return x;
    }
}
