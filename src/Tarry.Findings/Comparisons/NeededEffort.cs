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
    /// <param name="pairs">How many pairs the study tests: each must be told at its share of the 5 %, the first step of Holm.</param>
    public static Needed? Of(PairEvidence pair, double degreesOfFreedom, double marginMs, int pairs)
    {
        var level = 1 - (VerdictRule.ToldBelow / pairs);
        var perSitting = Math.Max(1, degreesOfFreedom / Math.Max(1, pair.Sittings - 1));
        return Sittings(pair.SittingVariance, perSitting, marginMs, level, Math.Max(2, pair.Pair.Differences.Length + 1)) is { } sittings
            ? new Needed(sittings, pair.TrialsPerSession)
            : null;
    }

    /// <summary>The fewest sittings whose minimum detectable difference is within the margin; null where 1,000 are not enough.</summary>
    /// <param name="variance">Variance of one sitting's difference, ms squared.</param>
    /// <param name="degreesPerSitting">Degrees of freedom that every sitting beyond the first brings.</param>
    /// <param name="marginMs">The margin.</param>
    /// <param name="level">The level at which the difference must be told.</param>
    /// <param name="from">The fewest that are considered, at least two.</param>
    public static int? Sittings(double variance, double degreesPerSitting, double marginMs, double level, int from)
    {
        for (var sittings = from; sittings <= MostSittings; sittings++)
        {
            if (MinimumDetectableDifference.Of(Math.Sqrt(variance / sittings), degreesPerSitting * (sittings - 1), level) <= marginMs)
            {
                return sittings;
            }
        }

        return null;
    }
}
