using Tarry.Findings.Sticks.Measures;

namespace Tarry.Findings.Sticks.Rankings;

/// <summary>Two conditions by one measure.</summary>
/// <param name="A">The first condition's id.</param>
/// <param name="B">The second's.</param>
/// <param name="Difference">Size of a less that of b, sign aside; for standard deviations the ratio of a to b. Refused where either has fewer than two sessions.</param>
/// <param name="IsRatio">Whether it is a ratio.</param>
/// <param name="AdjustedP">The chance of such a difference between equal sticks, Holm-adjusted over the pairs of the measure; null where refused.</param>
public sealed record StickComparison(string A, string B, StickOutcome Difference, bool IsRatio, double? AdjustedP);
