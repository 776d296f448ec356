using Tarry.Findings.Comparisons;

namespace Tarry.Findings.Exclusions;

/// <summary>A pair of which something else is said than before.</summary>
/// <param name="Before">The pair as it was.</param>
/// <param name="After">The pair as it would be; null where one of the two would have nothing left to compare.</param>
public sealed record VerdictChange(ComparisonFinding Before, ComparisonFinding? After);
