using Tarry.Findings.Comparisons;
using Tarry.Findings.Conditions;

namespace Tarry.Findings.Exclusions;

/// <summary>What setting trials of a condition aside changes: its figures, its rank, and every verdict that would be another.</summary>
public sealed record ExclusionEffect
{
    /// <summary>The condition as it is.</summary>
    public required ConditionFinding Before { get; init; }

    /// <summary>The condition as it would be.</summary>
    public required ConditionFinding After { get; init; }

    /// <summary>Its rank as it is; null where it has none.</summary>
    public required RankedCondition? RankBefore { get; init; }

    /// <summary>Its rank as it would be; null where it would have none.</summary>
    public required RankedCondition? RankAfter { get; init; }

    /// <summary>The pairs whose verdict changes, of all conditions: the scatter is pooled, so that a session touches pairs which it is not part of.</summary>
    public required IReadOnlyList<VerdictChange> Verdicts { get; init; }

    /// <summary>How many pairs there are.</summary>
    public required int Pairs { get; init; }

    /// <summary>Compares two documents of one study.</summary>
    /// <param name="before">The findings as they are.</param>
    /// <param name="after">The findings with the exclusion.</param>
    /// <param name="condition">The condition of which trials are set aside; both documents have it.</param>
    public static ExclusionEffect Of(FindingsDocument before, FindingsDocument after, string condition)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var pairs = after.Comparisons.ToDictionary(pair => (pair.A, pair.B));
        return new ExclusionEffect
        {
            Before = before.Conditions.Single(finding => finding.Id == condition),
            After = after.Conditions.Single(finding => finding.Id == condition),
            RankBefore = before.Ranking.FirstOrDefault(rank => rank.Id == condition),
            RankAfter = after.Ranking.FirstOrDefault(rank => rank.Id == condition),
            Pairs = before.Comparisons.Count,
            Verdicts =
            [
                .. before.Comparisons
                    .Select(pair => new VerdictChange(pair, pairs.GetValueOrDefault((pair.A, pair.B))))
                    .Where(change => change.After is not { } now || now.Verdict != change.Before.Verdict || now.IsRefused != change.Before.IsRefused),
            ],
        };
    }
}
