using Tarry.Findings.Comparisons;
using Tarry.Findings.Quality;
using Tarry.Metrology;

namespace Tarry.Findings.Contrasts;

/// <summary>Two conditions set against each other, of one study or of two that are linked through their references.</summary>
public sealed record ContrastFinding
{
    /// <summary>The first.</summary>
    public required ContrastSide A { get; init; }

    /// <summary>The second.</summary>
    public required ContrastSide B { get; init; }

    /// <summary>
    /// Difference, probability, margin, verdict, and what it would take. Within a study the probability is Holm-adjusted over the
    /// study's pairs; between studies there is one pair, and nothing to adjust for.
    /// </summary>
    public required ComparisonFinding Comparison { get; init; }

    /// <summary>The factors whose levels differ, as far as the study files state them.</summary>
    public required IReadOnlyList<FactorDifference> FactorDifferences { get; init; }

    /// <summary>
    /// Between studies: the reference's mean in the first study less that in the second. What shows here is what the bench shares
    /// with the conditions, and it is taken out of the difference. Null within a study.
    /// </summary>
    public required EstimateOutcome<LatencyDifference>? ReferenceChange { get; init; }

    /// <summary>What the reader must know beside it: the cautions of both conditions, and of the link.</summary>
    public required IReadOnlyList<Caution> Cautions { get; init; }
}
