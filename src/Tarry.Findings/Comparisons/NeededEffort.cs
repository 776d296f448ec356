using Tarry.Statistics.Comparisons;

namespace Tarry.Findings.Comparisons;

/// <summary>How many sittings it takes to tell a difference of the margin with 80 % power, at the present trials per session.</summary>
internal static class NeededEffort
{
    private const int MostSittings = 1000;

    /// <summary>The fewest sittings whose minimum detectable difference is within the margin; null where 1,000 are not enough.</summary>
    /// <param name="pair">The pair as it is known now.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of its difference: every sitting beyond the first brings its part of them.</param>
    /// <param name="marginMs">The margin.</param>
    public static Needed? Of(PairEvidence pair, double degreesOfFreedom, double marginMs)
    {
        var perSitting = Math.Max(1, degreesOfFreedom / Math.Max(1, pair.Sittings - 1));
        for (var sittings = 2; sittings <= MostSittings; sittings++)
        {
            var standardError = Math.Sqrt(pair.SittingVariance / sittings);
            if (MinimumDetectableDifference.Of(standardError, perSitting * (sittings - 1)) <= marginMs)
            {
                return new Needed(sittings, pair.TrialsPerSession);
            }
        }

        return null;
    }
}
