using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Intervals;

/// <summary>How long a plane vector is whose two components were estimated: its interval reaches 0 where the vector may be none.</summary>
/// <remarks>
/// The estimate's length squared over twice its variance follows the noncentral F distribution of 2 and the given degrees of freedom, with
/// noncentrality (true length)^2/variance: a Rice distribution with an estimated scale. The limits are the lengths for which what was
/// seen lies in a tail of (1 - level)/2. Assumes normal errors alike in all directions; where they are not, give the variance along the
/// vector. Far from 0 it is the t interval. The length itself is drawn away from 0: sqrt(max(0, m^2 - 2 s^2)) lies nearer.
/// </remarks>
public static class MagnitudeInterval
{
    /// <summary>The limits.</summary>
    /// <param name="magnitude">The length of the estimated vector, 0 or more.</param>
    /// <param name="standardError">The standard error of a component, above 0.</param>
    /// <param name="degreesOfFreedom">Its degrees of freedom, above 0, or infinite.</param>
    /// <param name="level">The confidence level, such as 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ConfidenceLimits Of(double magnitude, double standardError, double degreesOfFreedom, double level = 0.95)
    {
        Argument.RequireNotNegative(magnitude, nameof(magnitude));
        Argument.RequirePositive(standardError, nameof(standardError));
        Argument.RequireDegreesOfFreedom(degreesOfFreedom, nameof(degreesOfFreedom));
        Argument.RequireLevel(level, nameof(level));
        var far = StudentInterval.Of(magnitude, standardError, degreesOfFreedom, level);
        if (magnitude > 12 * standardError)
        {
            return far;
        }

        var tail = (1 - level) / 2;
        var scaled = magnitude / standardError;
        var low = Below(scaled, 0, degreesOfFreedom) <= 1 - tail ? 0 : Length(scaled, degreesOfFreedom, 1 - tail);
        var high = Below(scaled, 0, degreesOfFreedom) <= tail ? 0 : Length(scaled, degreesOfFreedom, tail);
        return new ConfidenceLimits(low * standardError, high * standardError);
    }

    /// <summary>The chance of a vector no longer than the one seen, at a true length; both in standard errors.</summary>
    internal static double Below(double seen, double length, double degreesOfFreedom)
    {
        // Poisson mixture of central distributions (NIST DLMF 8.17 for each): sum of p(j; d^2/2) times the incomplete beta of 1 + j.
        var rate = length * length / 2;
        var ratio = seen * seen;
        var finite = double.IsFinite(degreesOfFreedom);
        var (x, y) = finite ? (ratio / (ratio + degreesOfFreedom), degreesOfFreedom / (ratio + degreesOfFreedom)) : (0, 0);
        var sum = 0.0;
        var logRate = Math.Log(rate);
        var weight = -rate;
        var most = rate + (12 * Math.Sqrt(rate)) + 30;
        for (var j = 0; j <= most; j++)
        {
            var central = finite ? IncompleteBeta.Of(1 + j, degreesOfFreedom / 2, x, y) : ChiSquaredDistribution.Cdf(ratio, 2 + (2 * j));
            sum += Math.Exp(weight) * central;
            if (rate == 0)
            {
                break;
            }

            weight += logRate - Math.Log(j + 1);
        }

        return Math.Min(1, sum);
    }

    private static double Length(double seen, double degreesOfFreedom, double share)
    {
        var (low, high) = (0.0, seen + 4);
        while (Below(seen, high, degreesOfFreedom) > share)
        {
            high *= 2;
        }

        for (var round = 0; round < 44; round++)
        {
            var middle = (low + high) / 2;
            (low, high) = Below(seen, middle, degreesOfFreedom) > share ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
