namespace Tarry.Findings.Comparisons;

/// <summary>What is known of a pair before verdicts are made over all of them.</summary>
/// <param name="Pair">The pair.</param>
/// <param name="DifferenceMs">Mean of a less mean of b; null where nothing compares them.</param>
/// <param name="StandardError">Its standard error over sittings; null with fewer than two.</param>
/// <param name="DegreesOfFreedom">Of that error.</param>
/// <param name="Variance">Variance of one sitting's difference.</param>
/// <param name="Scatter">How a paired variance was moderated; null where the pair shares fewer than two sittings.</param>
/// <param name="Method">How it was found.</param>
/// <param name="Sessions">Sittings in common, or sessions of both where they share none.</param>
internal sealed record PairEvidence(
    PairedDifference Pair,
    double? DifferenceMs,
    double? StandardError,
    double DegreesOfFreedom,
    double? Variance,
    ModeratedScatter? Scatter,
    string Method,
    int Sessions);
