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
    private readonly Dictionary<ConditionPair, ModeratedScatter> byPair = [];

    public PairVariances(IReadOnlyList<SessionMeans> conditions, IReadOnlyList<ConditionPair> pairs)
    {
        Caution = UnequalGroups(conditions);
        var poolable = pairs.Where(pair => pair.InPool && pair.Differences.Length >= 2);
        foreach (var family in poolable.GroupBy(pair => Caution is null ? "" : Family(pair)))
        {
            Moderate([.. family]);
        }

        foreach (var pair in pairs.Where(pair => pair.Differences.Length >= 2 && !byPair.ContainsKey(pair)))
        {
            byPair[pair] = Own(pair);
        }
    }

    /// <summary>Set where links scatter plainly differently, so that pairs are pooled within links only.</summary>
    public Caution? Caution { get; }

    /// <summary>How the variance of one sitting's difference was found; null where the pair shares fewer than two sittings.</summary>
    public ModeratedScatter? Of(ConditionPair pair) => byPair.GetValueOrDefault(pair);

    /// <summary>The variance that the differences of a pair show by themselves.</summary>
    public static double Variance(ConditionPair pair) => Moments.Variance(pair.Differences);

    private static string Family(ConditionPair pair) =>
        string.CompareOrdinal(pair.A.Group, pair.B.Group) <= 0
            ? $"{pair.A.Group}\n{pair.B.Group}"
            : $"{pair.B.Group}\n{pair.A.Group}";

    private void Moderate(ConditionPair[] pairs)
    {
        // One pair has nothing to borrow from.
        var scattered = pairs.Where(pair => Variance(pair) > 0).ToList();
        if (scattered.Count < 2)
        {
            return;
        }

        // Differences that agree to the tick say nothing of the scatter: such a pair lends nothing and takes what the others have.
        var known = pairs.Select(pair => Variance(pair) > 0 ? pair.Differences.Length - 1.0 : 0).ToArray();
        var moderated = ModeratedVariance.Squeeze(pairs.Select(Variance).ToArray(), known);
        var cap = ResidualDegreesOfFreedom(pairs);
        var pooled = scattered.Average(Variance);
        for (var i = 0; i < pairs.Length; i++)
        {
            var own = pairs[i].Differences.Length - 1.0;
            var total = own + moderated.PriorDegreesOfFreedom;
            byPair[pairs[i]] = ModeratedScatter
                .TowardsPrior(known[i], moderated.PriorDegreesOfFreedom, moderated.PriorVariance, Math.Max(own, Math.Min(total, cap)))
                .AveragedWith(pooled);
        }
    }

    // Residual degrees of freedom of the two-way layout: sessions less conditions less sittings plus one.
    // Between two groups the smaller one, whose scatter may dominate, sets what is known.
    private static double ResidualDegreesOfFreedom(ConditionPair[] pairs)
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
        Moments.Variance(condition.Sittings.Values.Select(session => session.MeanMs).ToArray());


    // Two sittings may agree by chance; their trials still set how well the difference is known.
    private static ModeratedScatter Own(ConditionPair pair) =>
        ModeratedScatter.Own(pair.Differences.Length - 1) with { SharedVarianceMs2 = Variance(pair) > 0 ? 0 : pair.WithinVariance ?? 0 };
}
