using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Play;

namespace Tarry.Findings.Play;

/// <summary>What one condition shows for one player and window.</summary>
/// <param name="Best">The best compensation of its trials.</param>
/// <param name="Optimism">By how much that flatters.</param>
/// <param name="Sittings">With that compensation, how often each session hits, by sitting.</param>
internal sealed record HitEvidence(HitOptimum Best, double Optimism, IReadOnlyDictionary<string, SessionHits> Sittings)
{
    private const double Level = 0.95;

    /// <summary>The hit probability, its flattery taken away.</summary>
    public double Share => Math.Clamp(Best.Share - Optimism, 0, 1);

    /// <summary>The variance of the mean over sessions, if trials were all that scatters.</summary>
    public double VarianceWithin => Sittings.Values.Sum(session => session.VarianceOfShare) / (Sittings.Count * Sittings.Count);

    /// <summary>How much session shares scatter beyond what their trials explain, on sessions - 1 degrees of freedom; null where there is nothing to compare.</summary>
    public double? DispersionRatio => Sittings.Count >= 2 && VarianceWithin > 0
        ? Moments.Variance(Sittings.Values.Select(session => session.Share).ToArray()) / (VarianceWithin * Sittings.Count)
        : null;

    /// <summary>The share of presses that may be of a kind that no trial has shown: the exact 95 % limit of none seen (C. J. Clopper, E. S. Pearson, Biometrika 26, 1934).</summary>
    public double Unseen => 1 - Math.Pow((1 - Level) / 2, 1.0 / Sittings.Values.Sum(session => session.Presses));
}
