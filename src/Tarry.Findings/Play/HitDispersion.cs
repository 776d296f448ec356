using Tarry.Statistics.Comparisons;

namespace Tarry.Findings.Play;

/// <summary>
/// How much more session shares scatter than their trials explain: a factor on the binomial variance, moderated over
/// conditions, and at least 1 and what the condition's own sessions show.
/// </summary>
/// <remarks>
/// Quasi-likelihood with an empirical Bayes dispersion (S. P. Lund, D. Nettleton, D. J. McCarthy, G. K. Smyth, Stat. Appl.
/// Genet. Mol. Biol. 11(5), 2012). The factor has no unit, so that conditions that hit always and conditions that hit half
/// the time can be pooled. A condition whose sessions scatter more than the pool keeps what they show: simulation in
/// docs/decisions/0008-play-and-planning.md.
/// </remarks>
/// <param name="Factor">On the variance.</param>
/// <param name="DegreesOfFreedom">Of the factor.</param>
internal readonly record struct HitDispersion(double Factor, double DegreesOfFreedom)
{
    /// <summary>A factor for each ratio; a ratio that is null takes what the others have.</summary>
    /// <param name="ratios">Observed over expected variance, its degrees of freedom, and whether it may be pooled.</param>
    /// <param name="mostDegreesOfFreedom">What the layout leaves for a pooled variance.</param>
    public static HitDispersion[] Of(IReadOnlyList<(double? Ratio, double DegreesOfFreedom, bool InPool)> ratios, double mostDegreesOfFreedom)
    {
        var pooled = ratios.Where(entry => entry is { InPool: true, Ratio: not null, DegreesOfFreedom: > 0 }).ToList();
        var moderated = pooled.Count >= 2
            ? ModeratedVariance.Squeeze(pooled.Select(entry => entry.Ratio!.Value).ToArray(), pooled.Select(entry => entry.DegreesOfFreedom).ToArray())
            : null;
        return [.. ratios.Select(entry => Moderate(entry.Ratio, entry.DegreesOfFreedom, entry.InPool, moderated, mostDegreesOfFreedom))];
    }

    private static HitDispersion Moderate(double? ratio, double own, bool inPool, ModeratedVariance? moderated, double most)
    {
        if (moderated is null || !inPool)
        {
            // Sessions that all hit alike give no sign of more scatter than their trials explain.
            return ratio is { } alone ? new(Math.Max(1, alone), own) : new(1, double.PositiveInfinity);
        }

        var prior = moderated.PriorDegreesOfFreedom;
        var total = Math.Max(own, Math.Min(own + prior, most));
        var factor = ratio is not { } mine || double.IsPositiveInfinity(prior)
            ? moderated.PriorVariance
            : ((own * mine) + (prior * moderated.PriorVariance)) / (own + prior);
        return new(Math.Max(Math.Max(1, ratio ?? 1), factor), Math.Max(1, total));
    }
}
