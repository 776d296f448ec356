using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Play;

/// <summary>How far from the right moment presses come after a constant compensation.</summary>
public static class TimingError
{
    /// <summary>The mean absolute error E|L - c + N(0, s)| over latencies.</summary>
    /// <remarks>
    /// For one latency at distance d the mean of |d + N(0, s)| is s sqrt(2/pi) exp(-d^2/(2 s^2)) + d (1 - 2 Phi(-d/s)), the
    /// mean of a folded normal (F. C. Leone, L. S. Nelson, R. B. Nottingham, Technometrics 3, 1961). For s = 0 it is least
    /// at the median.
    /// </remarks>
    /// <param name="latencies">Latencies that arrived, in ms, at least one.</param>
    /// <param name="compensation">The constant, in ms.</param>
    /// <param name="playerSd">The player's own standard deviation, in ms, 0 or more.</param>
    /// <exception cref="ArgumentException">There is no latency.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is negative.</exception>
    public static double MeanAbsolute(ReadOnlySpan<double> latencies, double compensation, double playerSd = 0)
    {
        Argument.RequireCount(latencies, 1, nameof(latencies));
        Argument.RequireNotNegative(playerSd, nameof(playerSd));
        var sum = 0.0;
        foreach (var latency in latencies)
        {
            sum += Folded(latency - compensation, playerSd);
        }

        return sum / latencies.Length;
    }

    private static double Folded(double distance, double sd)
    {
        if (sd == 0)
        {
            return Math.Abs(distance);
        }

        var z = distance / sd;
        return (2 * sd * NormalDistribution.Density(z)) + (distance * (1 - (2 * NormalDistribution.Cdf(-z))));
    }
}
