using Tarry.Findings.Conditions;

namespace Tarry.Findings.Contrasts;

/// <summary>A condition as one side of a contrast.</summary>
internal static class ContrastCondition
{
    /// <summary>The condition's findings.</summary>
    /// <exception cref="ContrastException">The study has no such condition, or no response of it.</exception>
    public static ConditionFinding Find(FindingsDocument document, string id)
    {
        var found = document.Conditions.FirstOrDefault(condition => condition.Id == id);
        if (found is { UsedSessions: > 0 })
        {
            return found;
        }

        var others = document.Conditions.Where(condition => condition.UsedSessions > 0).Select(condition => condition.Id).ToList();
        throw new ContrastException(
            found is null ? $"'{document.Title}' has no data of a condition '{id}'." : $"No trial of '{id}' in '{document.Title}' is used, so there is nothing to compare.",
            others.Count == 0 ? "Capture or import sessions first." : $"Give one of: {string.Join(", ", others)}.");
    }

    public static ContrastSide Side(FindingsDocument document, ConditionFinding condition) =>
        new(document.Title, document.Reference, condition.Id, condition.UsedSessions);
}
