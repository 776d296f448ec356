using Tarry.Metrology;
using Tarry.Statistics.Uncertainty;

namespace Tarry.Findings.Budgets;

/// <summary>The uncertainty of one result with all that it is made of.</summary>
/// <param name="Correction">What is added to the estimate for delays of the rig that are known: not positive for a latency.</param>
/// <param name="Uncertainty">Combined, effective degrees of freedom, coverage factor, expanded; in milliseconds.</param>
/// <param name="Contributions">Source by source.</param>
public sealed record StatedUncertainty(LatencyDifference Correction, ExpandedUncertainty Uncertainty, IReadOnlyList<BudgetContribution> Contributions)
{
    internal static StatedUncertainty Of(double correctionMs, IReadOnlyList<BudgetContribution> contributions) => new(
        LatencyDifference.FromMilliseconds(correctionMs),
        ExpandedUncertainty.Of([.. contributions.Select(part => new UncertaintyComponent(part.Milliseconds, 1, part.DegreesOfFreedom))]),
        contributions);
}
