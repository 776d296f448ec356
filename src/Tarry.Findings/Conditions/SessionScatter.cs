using Tarry.Findings.Comparisons;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Descriptives;

namespace Tarry.Findings.Conditions;

/// <summary>
/// The variance between sessions of one statistic in every condition, each moderated towards what the conditions have in common.
/// </summary>
/// <remarks>
/// Empirical Bayes on sample variances: G. K. Smyth, "Linear models and empirical Bayes methods for assessing differential
/// expression in microarray experiments", Stat. Appl. Genet. Mol. Biol. 3(1), 2004. Conditions with a session whose
/// caution undoes an assumption keep their own variance and do not enter the prior. Each moderated variance is averaged with
/// the mean of all, as with pairs of conditions (docs/decisions/0001). Conditions that share sittings share what
/// these do to them, so the degrees of freedom are those of <see cref="SharedSittings"/> at most.
/// </remarks>
internal sealed class SessionScatter
{
    private readonly Dictionary<string, (double Variance, ModeratedScatter Moderation)> byCondition = [];

    /// <summary>A scatter from the statistic's value in each session of each condition.</summary>
    /// <param name="values">By condition: its sessions' values by sitting, and whether all of them may enter the pool.</param>
    public SessionScatter(IReadOnlyDictionary<string, (IReadOnlyDictionary<string, double> Sessions, bool InPool)> values)
    {
        var pooled = values.Where(entry => entry.Value.InPool && entry.Value.Sessions.Count >= 2).ToList();

        // Sessions that agree to the tick say nothing of the scatter: such a condition lends nothing and takes what the others have.
        var degreesOfFreedom = pooled
            .Select(entry => Variance(entry.Value.Sessions) > 0 ? entry.Value.Sessions.Count - 1.0 : 0)
            .ToArray();
        if (degreesOfFreedom.Count(degrees => degrees > 0) >= 2)
        {
            var moderated = ModeratedVariance.Squeeze(pooled.Select(entry => Variance(entry.Value.Sessions)).ToArray(), degreesOfFreedom);
            PooledVariance = moderated.PriorVariance;
            var mean = pooled.Select(entry => Variance(entry.Value.Sessions)).Where(variance => variance > 0).Average();
            PooledDegreesOfFreedom = SharedSittings.DegreesOfFreedom([.. pooled.Select(entry => entry.Value.Sessions)]);
            for (var i = 0; i < pooled.Count; i++)
            {
                var own = pooled[i].Value.Sessions;
                var known = Math.Max(Math.Min(moderated.TotalDegreesOfFreedom[i], PooledDegreesOfFreedom), degreesOfFreedom[i]);
                var moderation = ModeratedScatter
                    .TowardsPrior(degreesOfFreedom[i], moderated.PriorDegreesOfFreedom, moderated.PriorVariance, known)
                    .AveragedWith(mean);
                byCondition[pooled[i].Key] = (moderation.Variance(Variance(own)), moderation);
            }
        }

        foreach (var (condition, entry) in values)
        {
            if (entry.Sessions.Count >= 2 && !byCondition.ContainsKey(condition))
            {
                byCondition[condition] = (Variance(entry.Sessions), ModeratedScatter.Own(entry.Sessions.Count - 1));
            }
        }
    }

    /// <summary>What the conditions have in common; null with fewer than two to pool.</summary>
    public double? PooledVariance { get; }

    /// <summary>On how many degrees of freedom that rests.</summary>
    public double PooledDegreesOfFreedom { get; }

    /// <summary>The variance between sessions of one condition and its degrees of freedom; null with one session.</summary>
    public (double Variance, double DegreesOfFreedom)? Of(string condition) =>
        byCondition.TryGetValue(condition, out var found) ? (found.Variance, found.Moderation.DegreesOfFreedom) : null;

    /// <summary>How the variance of one condition was moderated; null with one session.</summary>
    public ModeratedScatter? ModerationOf(string condition) =>
        byCondition.TryGetValue(condition, out var found) ? found.Moderation : null;

    private static double Variance(IReadOnlyDictionary<string, double> sessions) =>
        sessions.Count < 2 ? 0 : Moments.Variance(sessions.Values.ToArray());
}
