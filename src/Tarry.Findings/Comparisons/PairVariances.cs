using Tarry.Findings.Quality;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Comparisons;

/// <summary>
/// The variance of the within-sitting differences of every pair, moderated towards what the pairs have in common.
/// </summary>
/// <remarks>
/// Pairs share conditions, so they hold fewer degrees of freedom than there are pairs: with C conditions and J sittings
/// the total is capped at (C - 1)(J - 1), what a two-way layout leaves. With few conditions the prior's own degrees of
/// freedom are poorly known, so each moderated variance is averaged with the pooled one. Simulation of 3-10 conditions and
/// 2-4 sittings (docs/decisions/0001): coverage of 95 % intervals .94-.96 over all pairs, where the conditions scatter alike
/// and where they scatter by a log-normal factor of sd 0.5.
/// </remarks>
internal sealed class PairVariances
{
    private const double PlainlyDifferent = 0.001;
    private readonly Dictionary<PairedDifference, ModeratedScatter> byPair = [];

    public PairVariances(IReadOnlyList<SessionMeans> conditions, IReadOnlyList<PairedDifference> pairs)
    {
        Caution = UnequalGroups(conditions);
        var poolable = pairs.Where(pair => pair.InPool && pair.Differences.Length >= 2 && Variance(pair) > 0);
        foreach (var family in poolable.GroupBy(pair => Caution is null ? "" : Family(pair)))
        {
            Moderate([.. family]);
        }

        foreach (var pair in pairs.Where(pair => pair.Differences.Length >= 2 && !byPair.ContainsKey(pair)))
        {
            byPair[pair] = ModeratedScatter.Own(pair.Differences.Length - 1);
        }
    }

    /// <summary>Set where links scatter plainly differently, so that pairs are pooled within links only.</summary>
    public Caution? Caution { get; }

    public ModeratedScatter? Of(PairedDifference pair) => byPair.GetValueOrDefault(pair);

    private static string Family(PairedDifference pair) =>
        string.CompareOrdinal(pair.A.Group, pair.B.Group) <= 0
            ? $"{pair.A.Group}\n{pair.B.Group}"
            : $"{pair.B.Group}\n{pair.A.Group}";

    private void Moderate(PairedDifference[] pairs)
    {
        // One pair has nothing to borrow from.
        if (pairs.Length < 2)
        {
            return;
        }

        var moderated = ModeratedVariance.Squeeze(
            pairs.Select(Variance).ToArray(),
            pairs.Select(pair => pair.Differences.Length - 1.0).ToArray());
        var cap = ResidualDegreesOfFreedom(pairs);
        var pooled = pairs.Average(Variance);
        for (var i = 0; i < pairs.Length; i++)
        {
            var own = pairs[i].Differences.Length - 1.0;
            var total = own + moderated.PriorDegreesOfFreedom;
            byPair[pairs[i]] = ModeratedScatter
                .TowardsPrior(own, moderated.PriorDegreesOfFreedom, moderated.PriorVariance, Math.Max(own, Math.Min(total, cap)))
                .AveragedWith(pooled);
        }
    }

    // Residual degrees of freedom of the two-way layout: sessions less conditions less sittings plus one.
    // Between two groups the smaller one, whose scatter may dominate, sets what is known.
    private static double ResidualDegreesOfFreedom(PairedDifference[] pairs)
    {
        var groups = pairs.SelectMany(pair => new[] { pair.A, pair.B }).Distinct().GroupBy(condition => condition.Group).ToList();
        var separate = groups.Count == 2 && pairs.All(pair => pair.A.Group != pair.B.Group);
        return separate
            ? groups.Min(group => group.Sum(condition => Math.Max(0, condition.Sittings.Count - 1)))
            : Layout([.. groups.SelectMany(group => group)]);
    }

    private static double Layout(SessionMeans[] conditions)
    {
        var sessions = conditions.Sum(condition => condition.Sittings.Count);
        var sittings = conditions.SelectMany(condition => condition.Sittings.Keys).Distinct().Count();
        return Math.Max(1, sessions - conditions.Length - sittings + 1);
    }

    private static Caution? UnequalGroups(IReadOnlyList<SessionMeans> conditions)
    {
        var groups = conditions
            .Where(condition => condition.Sittings.Count >= 2 && condition.Sittings.Values.All(session => session.InPool))
            .GroupBy(condition => condition.Group)
            .Select(group => (
                Name: group.Key,
                DegreesOfFreedom: group.Sum(condition => condition.Sittings.Count - 1.0),
                Sum: group.Sum(condition => (condition.Sittings.Count - 1.0) * Variance(condition))))
            .Where(group => group.DegreesOfFreedom >= 4 && group.Sum > 0)
            .OrderBy(group => group.Sum / group.DegreesOfFreedom)
            .ToList();
        if (groups.Count < 2)
        {
            return null;
        }

        var (least, most) = (groups[0], groups[^1]);
        var ratio = most.Sum / most.DegreesOfFreedom / (least.Sum / least.DegreesOfFreedom);
        var comparisons = groups.Count * (groups.Count - 1);
        return comparisons * FisherDistribution.UpperTail(ratio, most.DegreesOfFreedom, least.DegreesOfFreedom) < PlainlyDifferent
            ? new Caution(CautionKind.UnequalVariances, $"{Named(least.Name)} and {Named(most.Name)} conditions", new Dictionary<string, double>
            {
                ["smallest_ms"] = Math.Sqrt(least.Sum / least.DegreesOfFreedom),
                ["largest_ms"] = Math.Sqrt(most.Sum / most.DegreesOfFreedom),
            })
            : null;
    }

    private static string Named(string group) => group.Length == 0 ? "other" : group;

    private static double Variance(SessionMeans condition) =>
        Square(Moments.StandardDeviation(condition.Sittings.Values.Select(session => session.MeanMs).ToArray()));

    public static double Variance(PairedDifference pair) => Square(Moments.StandardDeviation(pair.Differences));

    private static double Square(double value) => value * value;
}
