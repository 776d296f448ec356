using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Intervals;

/// <summary>An interval for a standard deviation that asks for no normal law.</summary>
/// <remarks>
/// s exp(+-z se), se^2 = (m4 / s^4 - (n - 3) / (n - 1)) / (4 n): the variance of a variance, taken to the logarithm of its root
/// (delta method; D. G. Bonett, Comput. Stat. Data Anal. 50, 775, 2006 gives this with small corrections; from memory). Assumes independent values; a few hundred for tails like those of latencies.
/// </remarks>
public static class DeviationInterval
{
    /// <summary>With fewer values there is no interval.</summary>
    public const int FewestValues = 10;

    /// <summary>The interval; null where the values are too few or all the same.</summary>
    /// <param name="values">The values.</param>
    /// <param name="level">The confidence level, such as 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is outside its range.</exception>
    public static ConfidenceLimits? Of(ReadOnlySpan<double> values, double level = 0.95)
    {
        Argument.RequireLevel(level, nameof(level));
        if (values.Length < FewestValues)
        {
            return null;
        }

        var (mean, deviation, fourth) = (Moments.Mean(values), Moments.StandardDeviation(values), 0.0);
        if (!(deviation > 0))
        {
            return null;
        }

        foreach (var value in values)
        {
            fourth += Math.Pow((value - mean) / deviation, 4) / values.Length;
        }

        double count = values.Length;
        var error = Math.Sqrt((fourth - ((count - 3) / (count - 1))) / (4 * count));
        var factor = Math.Exp(StudentDistribution.Quantile(0.5 + (0.5 * level), double.PositiveInfinity) * error);
        return new ConfidenceLimits(deviation / factor, deviation * factor);
    }
}
