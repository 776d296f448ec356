using Tarry.Findings.Comparisons;
using Tarry.Findings.Sticks.Measures;

namespace Tarry.Findings.Sticks.Rankings;

/// <summary>The conditions by one measure, best first, with the ranks that the data allow and tie groups; and every pair.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="Part">Of which part.</param>
/// <param name="Places">The conditions that have an estimate of it.</param>
/// <param name="Pairs">Every pair of them once.</param>
public sealed record StickRanking(StickMeasure Measure, StickPart Part, IReadOnlyList<RankedCondition> Places, IReadOnlyList<StickComparison> Pairs);
