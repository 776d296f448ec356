using Tarry.Findings;
using Tarry.Findings.Quality;

namespace Tarry.Web.Quality;

/// <summary>All cautions of a study by their kind, each with the condition that it concerns.</summary>
public static class CautionGroups
{
    /// <summary>The groups in the order of the kinds; a caution of the whole study has no condition.</summary>
    public static IReadOnlyList<(string Kind, IReadOnlyList<(string? Condition, Caution Caution)> Cautions)> Of(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return
        [
            .. document.Cautions.Select(caution => (Condition: (string?)null, Caution: caution))
                .Concat(document.Conditions.SelectMany(condition => condition.Cautions.Select(caution => (Condition: (string?)condition.Id, Caution: caution))))
                .GroupBy(entry => entry.Caution.Kind)
                .OrderBy(group => group.Key)
                .Select(group => (Words(group.Key), (IReadOnlyList<(string?, Caution)>)[.. group])),
        ];
    }

    private static string Words(CautionKind kind)
    {
        var words = CautionWording.Key(kind).Replace('-', ' ');
        return char.ToUpperInvariant(words[0]) + words[1..];
    }
}
