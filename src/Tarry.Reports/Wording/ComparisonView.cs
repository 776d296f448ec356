using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Metrology;

namespace Tarry.Reports.Wording;

/// <summary>Pairs of conditions, looked at from either side.</summary>
public static class ComparisonView
{
    /// <summary>The pair as <paramref name="first"/> against <paramref name="second"/>, or null where the document does not hold it.</summary>
    public static ComparisonFinding? Find(FindingsDocument document, string first, string second)
    {
        var pair = document.Comparisons.FirstOrDefault(comparison =>
            (comparison.A == first && comparison.B == second) || (comparison.A == second && comparison.B == first));
        return pair is null || pair.A == first ? pair : pair.Swapped();
    }

    /// <summary>Whether the verdict tells the two apart at all.</summary>
    public static bool IsTold(ComparisonFinding comparison) =>
        comparison.Verdict is Verdict.Slower or Verdict.Faster or Verdict.BelowMargin;

    /// <summary>Every pair with the reference, seen as the other condition against it, in the order of the conditions.</summary>
    public static IReadOnlyList<ComparisonFinding> AgainstReference(FindingsDocument document) =>
        document.Reference is not { } reference
            ? []
            : [.. document.Conditions
                .Where(condition => condition.Id != reference)
                .Select(condition => Find(document, condition.Id, reference))
                .OfType<ComparisonFinding>()];

    /// <summary>Every pair without the reference.</summary>
    public static IReadOnlyList<ComparisonFinding> WithoutReference(FindingsDocument document) =>
        [.. document.Comparisons.Where(comparison => comparison.A != document.Reference && comparison.B != document.Reference)];
}
