using Tarry.Findings.Comparisons;
using Tarry.Metrology;
using Tarry.Statistics.Comparisons;

namespace Tarry.Findings.Play;

/// <summary>Every pair of conditions in one setting, and the ranks that they allow.</summary>
internal static class PlayComparisons
{
    public static (IReadOnlyList<PlayComparison> Comparisons, PlayRanking Ranking) Of(
        IReadOnlyList<PlayCondition> conditions, IReadOnlyList<HitDispersion> alone, int setting, double playerSdMs, double windowMs)
    {
        var pairs = Enumerable.Range(0, conditions.Count)
            .SelectMany(a => Enumerable.Range(a + 1, conditions.Count - a - 1).Select(b => (A: a, B: b, Difference: new HitDifference(conditions[a], conditions[b], setting))))
            .ToList();
        var paired = HitDispersion.Of([.. pairs.Select(pair => (pair.Difference.Ratio, pair.Difference.DegreesOfFreedom, pair.Difference.InPool))], Layout(conditions));
        var evidence = pairs.Select((pair, index) => pair.Difference.Evidence(paired[index], alone[pair.A], alone[pair.B])).ToList();
        var adjusted = new Queue<double>(HolmAdjustment.Adjust([.. evidence.Where(found => found is { Tested: true }).Select(found => found!.Value.Difference.TwoSidedP)]));
        var told = new bool[conditions.Count, conditions.Count];
        var comparisons = new List<PlayComparison>(pairs.Count);
        for (var i = 0; i < pairs.Count; i++)
        {
            var (a, b, pair) = pairs[i];
            double? p = evidence[i] is { Tested: true } ? adjusted.Dequeue() : null;
            if (p < VerdictRule.ToldBelow)
            {
                var (better, worse) = evidence[i]!.Value.Difference.Difference > 0 ? (a, b) : (b, a);
                told[better, worse] = true;
            }

            comparisons.Add(new PlayComparison
            {
                A = pair.A.Id,
                B = pair.B.Id,
                PlayerSdMs = playerSdMs,
                WindowMs = windowMs,
                Difference = evidence[i] is { } found
                    ? pair.Estimate(found.Difference, found.Method)
                    : new NotEnough<ProportionDifference>(Math.Min(pair.A.Sessions.Count, pair.B.Sessions.Count), 2, "sessions of both"),
                AdjustedP = p,
            });
        }

        return (comparisons, new PlayRanking(playerSdMs, windowMs, Ranks(conditions, setting, told)));
    }

    // Pairs share conditions: a two-way layout leaves sessions less conditions less sittings plus one.
    private static double Layout(IReadOnlyList<PlayCondition> conditions)
    {
        var sittings = conditions.SelectMany(condition => condition.Sessions.Select(session => session.Key.Sitting)).Distinct().Count();
        return Math.Max(1, conditions.Sum(condition => condition.Sessions.Count) - conditions.Count - sittings + 1);
    }

    private static List<RankedCondition> Ranks(IReadOnlyList<PlayCondition> conditions, int setting, bool[,] told)
    {
        var sets = RankSets.Of(told);
        var ranked = new List<RankedCondition>(conditions.Count);
        var (group, first) = (0, -1);
        foreach (var index in Enumerable.Range(0, conditions.Count)
            .OrderByDescending(index => conditions[index].Windows[setting].Share)
            .ThenBy(index => conditions[index].Id, StringComparer.Ordinal))
        {
            if (first < 0 || told[first, index])
            {
                (group, first) = (group + 1, index);
            }

            ranked.Add(new RankedCondition(conditions[index].Id, sets[index].Best, sets[index].Worst, group));
        }

        return ranked;
    }
}
