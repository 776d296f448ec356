using Tarry.Findings.Comparisons;
using Tarry.Statistics.Comparisons;

namespace Tarry.Findings.Conditions;

/// <summary>
/// The variance between sessions of one statistic in every condition, each moderated towards what the conditions have in common.
/// </summary>
/// <remarks>
/// Empirical Bayes on sample variances: G. K. Smyth, "Linear models and empirical Bayes methods for assessing differential
/// expression in microarray experiments", Stat. Appl. Genet. Mol. Biol. 3(1), 2004. Conditions with a session whose
/// caution undoes an assumption keep their own variance and do not enter the prior.
/// </remarks>
internal sealed class SessionScatter
{
    private readonly Dictionary<string, (double Variance, ModeratedScatter Moderation)> byCondition = [];

    /// <summary>A scatter from the statistic's value in each session of each condition.</summary>
    /// <param name="values">By condition: the values of its sessions, and whether all of them may enter the pool.</param>
    public SessionScatter(IReadOnlyDictionary<string, (double[] Sessions, bool InPool)> values)
    {
        var pooled = values.Where(entry => entry.Value.InPool && Variance(entry.Value.Sessions) > 0).ToList();
        if (pooled.Count >= 2)
        {
            var moderated = ModeratedVariance.Squeeze(
                pooled.Select(entry => Variance(entry.Value.Sessions)).ToArray(),
                pooled.Select(entry => entry.Value.Sessions.Length - 1.0).ToArray());
            PooledVariance = moderated.PriorVariance;
            PooledDegreesOfFreedom = pooled.Sum(entry => entry.Value.Sessions.Length - 1.0);
            for (var i = 0; i < pooled.Count; i++)
            {
                var own = pooled[i].Value.Sessions;
                var moderation = ModeratedScatter.TowardsPrior(
                    own.Length - 1.0, moderated.PriorDegreesOfFreedom, moderated.PriorVariance, moderated.TotalDegreesOfFreedom[i]);
                byCondition[pooled[i].Key] = (moderation.Variance(Variance(own)), moderation);
            }
        }

        foreach (var (condition, entry) in values)
        {
            if (entry.Sessions.Length >= 2 && !byCondition.ContainsKey(condition))
            {
                byCondition[condition] = (Variance(entry.Sessions), ModeratedScatter.Own(entry.Sessions.Length - 1));
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

    private static double Variance(double[] values)
    {
        if (values.Length < 2)
        {
            return 0;
        }

        var sd = Statistics.Descriptives.Moments.StandardDeviation(values);
        return sd * sd;
    }
}
