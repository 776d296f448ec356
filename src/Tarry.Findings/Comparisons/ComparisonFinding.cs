using Tarry.Findings.Budgets;
using Tarry.Findings.Quality;
using Tarry.Metrology;

namespace Tarry.Findings.Comparisons;

/// <summary>One pair of conditions.</summary>
public sealed record ComparisonFinding
{
    /// <summary>The first condition's id.</summary>
    public required string A { get; init; }

    /// <summary>The second condition's id.</summary>
    public required string B { get; init; }

    /// <summary>Mean of a less mean of b: positive when a is slower.</summary>
    public required EstimateOutcome<LatencyDifference> Difference { get; init; }

    /// <summary>What the rig adds to its uncertainty, and what cancels; null where there is no difference.</summary>
    public StatedUncertainty? Budget { get; init; }

    /// <summary>Probability of such a difference between equal conditions, Holm-adjusted over the study's pairs; null with one sitting.</summary>
    public required double? AdjustedP { get; init; }

    /// <summary>The smallest difference that matters, in milliseconds.</summary>
    public required double MarginMs { get; init; }

    /// <summary>What can be said; undecided where it is refused.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The difference that this design tells with 80 % power at the 5 % level; null with one sitting.</summary>
    public required LatencyDifference? MinimumDetectable { get; init; }

    /// <summary>What it would take to tell a difference of the margin; null where the verdict is made or nothing is known of the scatter.</summary>
    public required Needed? Needed { get; init; }

    /// <summary>The standard error of the difference over sittings, in milliseconds; null with one sitting.</summary>
    public double? StandardErrorMs { get; init; }

    /// <summary>The degrees of freedom of that error; null with one sitting.</summary>
    public double? DegreesOfFreedom { get; init; }

    /// <summary>How the variance of within-sitting differences was moderated; null where the pair shares fewer than two sittings.</summary>
    public ModeratedScatter? Scatter { get; init; }

    /// <summary>The cautions because of which a verdict is refused; empty where none is.</summary>
    public IReadOnlyList<Caution> Refusal { get; init; } = [];

    /// <summary>Whether the verdict is refused, because what it would rest on is undone.</summary>
    public bool IsRefused => Refusal.Count > 0;

    /// <summary>The same pair seen from the other side: b against a.</summary>
    public ComparisonFinding Swapped() => this with
    {
        A = B,
        B = A,
        Difference = Difference is Estimate<LatencyDifference> estimate
            ? estimate with { Value = Negative(estimate.Value), Interval = new(Negative(estimate.Interval.High), Negative(estimate.Interval.Low)) }
            : Difference,
        Budget = Budget is { } budget ? budget with { Correction = Negative(budget.Correction) } : null,
        Verdict = VerdictWording.Reversed(Verdict),
    };

    private static LatencyDifference Negative(LatencyDifference value) => LatencyDifference.FromMicroseconds(0 - value.Microseconds);
}
