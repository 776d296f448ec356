using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Reports.Figures;
using Tarry.Reports.Merits;
using Tarry.Reports.Wording;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Web.Conditions;

/// <summary>What the page of a condition shows.</summary>
public sealed record ConditionView
{
    /// <summary>The condition and its rank.</summary>
    public required RankedRow Ranked { get; init; }

    /// <summary>The condition that stands before it in the standing; null for the first.</summary>
    public required string? Previous { get; init; }

    /// <summary>The condition that stands behind it; null for the last.</summary>
    public required string? Next { get; init; }

    /// <summary>All conditions in the order of the standing.</summary>
    public required IReadOnlyList<string> All { get; init; }

    /// <summary>Its figures of merit.</summary>
    public required IReadOnlyList<(FigureOfMerit Figure, MeritValue Value)> Figures { get; init; }

    /// <summary>What can be said of it against the reference; null where there is nothing.</summary>
    public required string? AgainstReference { get; init; }

    /// <summary>The condition with the sessions whose trials are drawn in order.</summary>
    public required ConditionFinding InOrder { get; init; }

    /// <summary>The sitting whose trials are drawn alone; null for all.</summary>
    public required string? Sitting { get; init; }

    /// <summary>The session that is to be set aside on trial; null for none.</summary>
    public required SessionKey? Aside { get; init; }

    /// <summary>What the study file sets aside of it.</summary>
    public required IReadOnlyList<Exclusion> Exclusions { get; init; }

    /// <summary>The findings.</summary>
    public ConditionFinding Condition => Ranked.Condition;

    /// <summary>Makes it; null where the study has no condition of that id with data.</summary>
    /// <param name="document">The findings.</param>
    /// <param name="exclusions">The exclusions of the study file.</param>
    /// <param name="id">The condition; the first of the standing where it is null.</param>
    /// <param name="sitting">The sitting whose trials are drawn alone; null, or one that there is not, for all.</param>
    /// <param name="aside">The sitting whose session is to be set aside on trial; null for none.</param>
    public static ConditionView? Make(FindingsDocument document, IReadOnlyList<Exclusion> exclusions, string? id, string? sitting, string? aside)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(exclusions);
        var rows = RankedRow.Of(document);
        var index = id is null ? 0 : rows.ToList().FindIndex(row => row.Condition.Id == id);
        if (index < 0 || index >= rows.Count)
        {
            return null;
        }

        var condition = rows[index].Condition;
        var chosen = condition.Sessions.FirstOrDefault(session => session.Key.Sitting == sitting);
        return new ConditionView
        {
            Ranked = rows[index],
            Previous = index > 0 ? rows[index - 1].Condition.Id : null,
            Next = index < rows.Count - 1 ? rows[index + 1].Condition.Id : null,
            All = [.. rows.Select(row => row.Condition.Id)],
            Figures = [.. FiguresOfMerit.All.Select(figure => (figure, figure.Of(condition)))],
            AgainstReference = document.Reference is { } reference && ComparisonView.Find(document, condition.Id, reference) is { } pair ? VerdictSentence.Of(pair) : null,
            InOrder = chosen is null ? condition : condition with { Sessions = [chosen] },
            Sitting = chosen?.Key.Sitting,
            Aside = condition.Sessions.FirstOrDefault(session => session.Key.Sitting == aside && session.Counts.Used > 0)?.Key,
            Exclusions = [.. exclusions.Where(exclusion => exclusion.Session.Condition == condition.Id)],
        };
    }
}
