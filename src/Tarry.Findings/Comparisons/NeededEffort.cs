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
    public static Needed? Of(PairEvidence pair, double degreesOfFreedom, double marginMs, int pairs) => Of(
        pair.SittingVariance,
        degreesOfFreedom / Math.Max(1, pair.Sittings - 1),
        pair.Pair.Differences.Length + 1,
        pair.TrialsPerSession,
        marginMs,
        pairs);

    /// <summary>The same for any difference: its variance in one sitting, and how many degrees of freedom each further sitting brings.</summary>
    public static Needed? Of(double sittingVariance, double degreesPerSitting, int fewestSittings, int trialsPerSession, double marginMs, int pairs)
    {
        var level = 1 - (VerdictRule.ToldBelow / pairs);
        for (var sittings = Math.Max(2, fewestSittings); sittings <= MostSittings; sittings++)
        {
            var degreesOfFreedom = Math.Max(1, degreesPerSitting) * (sittings - 1);
            if (MinimumDetectableDifference.Of(Math.Sqrt(sittingVariance / sittings), degreesOfFreedom, level) <= marginMs)
            {
                return new Needed(sittings, trialsPerSession);
            }
        }

        return null;
    }
}
