using Tarry.Findings.Comparisons;

namespace Tarry.Findings.Factors;

/// <summary>Two conditions of one study that differ in one factor and in nothing else: what a level of it costs on one device.</summary>
public sealed record FactorContrast
{
    /// <summary>The factor, by its key in the study file, such as <c>layer</c>.</summary>
    public required string Factor { get; init; }

    /// <summary>The level of the first condition, <c>a</c> of <see cref="Comparison"/>.</summary>
    public required string Level { get; init; }

    /// <summary>The level of the second, from which the cost counts: <c>none</c> where there is one, else the one that stands first in the study file.</summary>
    public required string Baseline { get; init; }

    /// <summary>The levels of all other factors, which both share.</summary>
    public required IReadOnlyDictionary<string, string> Shared { get; init; }

    /// <summary>
    /// The condition with the level less the one with the baseline: positive where the level makes it slower. Its probability is
    /// adjusted within the family of <see cref="FactorFinding.Tests"/>, not over all pairs of the study.
    /// </summary>
    public required ComparisonFinding Comparison { get; init; }
}
