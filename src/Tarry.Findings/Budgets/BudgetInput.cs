using Tarry.Statistics.Uncertainty;

namespace Tarry.Findings.Budgets;

/// <summary>One line of an uncertainty budget: what is known of an input quantity.</summary>
/// <param name="Source">Which.</param>
/// <param name="Unit"><c>us</c> or <c>ppm</c>.</param>
/// <param name="Estimate">Its best value, for which latencies are corrected.</param>
/// <param name="HalfWidth">Half the distance of its limits; null where it is known by its standard uncertainty.</param>
/// <param name="Distribution">How it is distributed about the estimate.</param>
/// <param name="StandardUncertainty">Its standard uncertainty.</param>
/// <param name="DegreesOfFreedom">How well that is known; may be infinite.</param>
/// <param name="Basis">Where it comes from, in words.</param>
public sealed record BudgetInput(
    UncertaintySource Source,
    string Unit,
    double Estimate,
    double? HalfWidth,
    UncertaintyDistribution Distribution,
    double StandardUncertainty,
    double DegreesOfFreedom,
    string Basis)
{
    /// <summary>One that lies anywhere between two limits; its estimate is the middle (JCGM 100:2008, 4.3.7 and 4.3.8).</summary>
    internal static BudgetInput Between(UncertaintySource source, string unit, double low, double high, double degreesOfFreedom, string basis)
    {
        var half = (high - low) / 2;
        return new BudgetInput(
            source,
            unit,
            (low + high) / 2,
            half,
            UncertaintyDistribution.Rectangular,
            TypeB.StandardUncertainty(half, UncertaintyDistribution.Rectangular),
            degreesOfFreedom,
            basis);
    }

    /// <summary>One that is known by its standard uncertainty.</summary>
    internal static BudgetInput Known(UncertaintySource source, string unit, double estimate, double standardUncertainty, double degreesOfFreedom, string basis) =>
        new(source, unit, estimate, null, UncertaintyDistribution.Normal, standardUncertainty, degreesOfFreedom, basis);
}
