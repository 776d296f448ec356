namespace Tarry.Statistics.Distributions;

/// <summary>The limit law of the largest deviation of a Brownian bridge (A. Kolmogorov, 1933).</summary>
public static class KolmogorovDistribution
{
    /// <summary>The probability of a deviation above <paramref name="x"/>: 2 sum (-1)^(k-1) exp(-2 k^2 x^2).</summary>
    /// <remarks>Below 0.5 by the complementary theta series, which converges there.</remarks>
    public static double UpperTail(double x)
    {
        if (!(x > 0))
        {
            return 1;
        }

        var sum = 0.0;
        if (x < 0.5)
        {
            for (var k = 1; k <= 5; k++)
            {
                var odd = (2 * k) - 1;
                sum += Math.Exp(-odd * odd * Math.PI * Math.PI / (8 * x * x));
            }

            return 1 - (Math.Sqrt(2 * Math.PI) / x * sum);
        }

        for (var k = 1; k <= 20; k++)
        {
            sum += (k % 2 == 1 ? 1 : -1) * Math.Exp(-2.0 * k * k * x * x);
        }

        return Math.Min(1, 2 * sum);
    }

    /// <summary>
    /// The same where the deviation is divided by a standard deviation estimated on <paramref name="degreesOfFreedom"/>:
    /// the expectation of the series over chi-squared / degrees of freedom, 2 sum (-1)^(k-1) (1 + 4 k^2 x^2 / v)^(-v/2).
    /// </summary>
    /// <param name="x">The studentized deviation.</param>
    /// <param name="degreesOfFreedom">v, 8 or more so that the series converges fast.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than 8 degrees of freedom.</exception>
    public static double UpperTail(double x, double degreesOfFreedom)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(degreesOfFreedom, 8);
        if (!(x > 0.2))
        {
            return 1;
        }

        var sum = 0.0;
        for (var k = 1; k <= 400; k++)
        {
            sum += (k % 2 == 1 ? 1 : -1) * Math.Pow(1 + (4.0 * k * k * x * x / degreesOfFreedom), -degreesOfFreedom / 2);
        }

        return Math.Clamp(2 * sum, 0, 1);
    }
}
