using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Descriptives;

namespace Tarry.Findings.Comparisons;

/// <summary>What is known of a pair before verdicts are made over all of them.</summary>
/// <param name="Pair">The pair.</param>
/// <param name="Difference">Mean of a less mean of b with its standard error over sittings, ms; null where there are too few sittings for one.</param>
/// <param name="SittingVariance">Variance of one sitting's difference, ms squared.</param>
/// <param name="Method">How it was found.</param>
/// <param name="Sessions">Sittings in common, or sessions of both where they share none.</param>
/// <param name="Scatter">How the variance was moderated; null where the pair shares fewer than two sittings.</param>
internal sealed record PairEvidence(ConditionPair Pair, MeanDifference? Difference, double SittingVariance, string Method, int Sessions, ModeratedScatter? Scatter = null)
{
    /// <summary>Sessions of either on average: in how many sittings such a study takes place.</summary>
    public int Sittings => Method == Findings.MethodName.ModeratedUnpaired ? Math.Max(1, Sessions / 2) : Sessions;

    /// <summary>Whether latencies of either are known as intervals only.</summary>
    public bool IsCensored => CensoredDifference.HalfWidthMs(Pair) > 0;

    /// <summary>The method as findings name it.</summary>
    public string MethodName => IsCensored ? Findings.MethodName.DifferenceOfBounds : Method;

    /// <summary>Trials of both.</summary>
    public int Trials => Method == Findings.MethodName.ModeratedUnpaired ? Pair.A.Trials + Pair.B.Trials : Pair.Trials;

    /// <summary>Trials of a session of either on average.</summary>
    public int TrialsPerSession => Trials / (Method == Findings.MethodName.ModeratedUnpaired ? Sessions : 2 * Sessions);

    /// <summary>
    /// The difference as it is held against chance: where the pair's own sittings scatter more than the moderated variance says,
    /// they count. Of all pairs the most extreme is looked at first, and that is likely to be one whose condition scatters more
    /// than the others and was moderated too far (docs/decisions/0009).
    /// </summary>
    public MeanDifference? Guarded => Difference is { } difference && Method == Findings.MethodName.ModeratedPaired
        ? difference with
        {
            StandardError = Math.Max(difference.StandardError, Math.Sqrt(Moments.Variance(Pair.Differences) / Pair.Differences.Length) + CensoredDifference.Raise(Pair, difference.DegreesOfFreedom)),
        }
        : Difference;
}
