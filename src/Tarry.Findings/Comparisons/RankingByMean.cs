using Tarry.Findings.Conditions;
using Tarry.Statistics.Comparisons;

namespace Tarry.Findings.Comparisons;

/// <summary>
/// Ranks conditions by mean, with the ranks that simultaneous Tukey-Kramer intervals of all pairs allow, and tie groups:
/// from the soonest on, a group is its first condition and those that follow until one is told from it.
/// </summary>
internal static class RankingByMean
{
    public static IReadOnlyList<RankedCondition> Of(IReadOnlyList<SessionMeans> conditions, IReadOnlyList<PairEvidence> evidence)
    {
        var told = RankSets.Told(Differences(conditions, evidence), Estimates.Level);
        var sets = RankSets.Of(told);
        var ranking = new List<RankedCondition>(conditions.Count);
        var (group, first) = (0, -1);
        foreach (var index in Enumerable.Range(0, conditions.Count)
            .OrderBy(index => conditions[index].Mean)
            .ThenBy(index => conditions[index].Id, StringComparer.Ordinal))
        {
            if (first < 0 || told[first, index])
            {
                (group, first) = (group + 1, index);
            }

            ranking.Add(new RankedCondition(conditions[index].Id, sets[index].Best, sets[index].Worst, group));
        }

        return ranking;
    }

    private static MeanDifference?[,] Differences(IReadOnlyList<SessionMeans> conditions, IReadOnlyList<PairEvidence> evidence)
    {
        var places = conditions.Select((condition, index) => (condition, index)).ToDictionary(entry => entry.condition.Id, entry => entry.index);
        var differences = new MeanDifference?[conditions.Count, conditions.Count];
        foreach (var pair in evidence)
        {
            // Pairs stand in the order of the conditions, so that a comes before b.
            differences[places[pair.Pair.A.Id], places[pair.Pair.B.Id]] = pair.Difference;
        }

        return differences;
    }
}
