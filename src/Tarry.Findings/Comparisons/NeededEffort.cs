using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Comparisons;

/// <summary>How many sittings it takes to tell a difference of the margin with 80 % power, at the present trials per session.</summary>
internal static class NeededEffort
{
    private const int MostSittings = 1000;

    /// <summary>The fewest sittings whose minimum detectable difference is within the margin.</summary>
    /// <param name="variance">Variance of a within-sitting difference, ms squared.</param>
    /// <param name="sharedDegreesOfFreedom">Degrees of freedom that other pairs lend, per sitting beyond the first.</param>
    /// <param name="marginMs">The margin.</param>
    /// <param name="trialsPerSession">The present trials per session.</param>
    public static Needed? Of(double variance, double sharedDegreesOfFreedom, double marginMs, int trialsPerSession)
    {
        for (var sittings = 2; sittings <= MostSittings; sittings++)
        {
            var degreesOfFreedom = Math.Max(1, sharedDegreesOfFreedom) * (sittings - 1);
            var detectable = MinimumDetectableMs(Math.Sqrt(variance / sittings), degreesOfFreedom);
            if (detectable <= marginMs)
            {
                return new Needed(sittings, trialsPerSession);
            }
        }

        return null;
    }

    /// <summary>(t.975 + t.80) SE.</summary>
    public static double MinimumDetectableMs(double standardError, double degreesOfFreedom) =>
        (StudentDistribution.Quantile(0.975, degreesOfFreedom) + StudentDistribution.Quantile(0.80, degreesOfFreedom)) * standardError;
}
