
namespace Tarry.Findings.Comparisons;

/// <summary>
/// Ranks conditions by mean, with the ranks that simultaneous Tukey-Kramer intervals of all pairs allow, and tie groups:
/// from the soonest on, a group is its first condition and those that follow until one is told from it.
/// </summary>
internal static class RankingByMean
{
    private const double Level = 0.95;

    public static IReadOnlyList<RankedCondition> Of(IReadOnlyList<SessionMeans> conditions, IReadOnlyList<PairEvidence> evidence)
    {
        var order = conditions.Select((condition, index) => (condition, index))
            .OrderBy(entry => entry.condition.Mean)
            .ThenBy(entry => entry.condition.Id, StringComparer.Ordinal)
            .Select(entry => entry.index)
            .ToArray();
        if (conditions.Count == 1)
        {
            return [new RankedCondition(conditions[0].Id, 1, 1, 1)];
        }

        var told = Told(conditions, evidence);
        var groups = new int[conditions.Count];
        var (group, first) = (0, -1);
        foreach (var index in order)
        {
            if (first < 0 || told[first, index])
            {
                (group, first) = (group + 1, index);
            }

            groups[index] = group;
        }

        return [.. order.Select(index => new RankedCondition(
            conditions[index].Id,
            1 + Enumerable.Range(0, conditions.Count).Count(other => told[other, index]),
            conditions.Count - Enumerable.Range(0, conditions.Count).Count(other => told[index, other]),
            groups[index]))];
    }

    // told[i, j]: i is told sooner than j by the simultaneous interval of the pair.
    private static bool[,] Told(IReadOnlyList<SessionMeans> conditions, IReadOnlyList<PairEvidence> evidence)
    {
        var places = conditions.Select((condition, index) => (condition.Id, index)).ToDictionary(entry => entry.Id, entry => entry.index);
        var told = new bool[conditions.Count, conditions.Count];
        var critical = new Dictionary<double, double>();
        foreach (var pair in evidence)
        {
            if (pair.DifferenceMs is not { } difference || pair.StandardError is not { } error)
            {
                continue;
            }

            if (!critical.TryGetValue(pair.DegreesOfFreedom, out var q))
            {
                q = Statistics.Distributions.StudentizedRange.Quantile(Level, conditions.Count, pair.DegreesOfFreedom) / Math.Sqrt(2);
                critical[pair.DegreesOfFreedom] = q;
            }

            var (a, b) = (places[pair.Pair.A.Id], places[pair.Pair.B.Id]);
            told[a, b] = difference + (q * error) < 0;
            told[b, a] = difference - (q * error) > 0;
        }

        return told;
    }
}
