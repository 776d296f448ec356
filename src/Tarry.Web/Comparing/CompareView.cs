using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Factors;
using Tarry.Reports.Documents;
using Tarry.Reports.Figures;
using Tarry.Reports.Wording;

namespace Tarry.Web.Comparing;

/// <summary>What the page of comparisons shows: a pair, a factor, or all against the reference; and always the matrix of all pairs.</summary>
public sealed record CompareView
{
    /// <summary>The conditions, in the order of the standing.</summary>
    public required IReadOnlyList<string> Ids { get; init; }

    /// <summary>The pair; null where none is asked for, or there is none.</summary>
    public required PairView? Pair { get; init; }

    /// <summary>The factor; null where none is asked for, or it does not differ alone anywhere.</summary>
    public required FactorFinding? Factor { get; init; }

    /// <summary>The contrasts of the factor as pairs, for their figure; null without a factor.</summary>
    public required FindingsDocument? Contrasts { get; init; }

    /// <summary>What the factor does, in words and a table; null without a factor.</summary>
    public required XElement? FactorWords { get; init; }

    /// <summary>All pairs with the reference, for their figure; null without a reference.</summary>
    public required FindingsDocument? AgainstReference { get; init; }

    /// <summary>All pairs.</summary>
    public required VerdictMatrix Matrix { get; init; }

    /// <summary>Makes it.</summary>
    /// <param name="document">The findings.</param>
    /// <param name="a">The first of a pair; null for none.</param>
    /// <param name="b">The second of a pair; null for none.</param>
    /// <param name="factor">A factor by its key; null for none.</param>
    public static CompareView Make(FindingsDocument document, string? a, string? b, string? factor)
    {
        ArgumentNullException.ThrowIfNull(document);
        var found = document.Factors?.FirstOrDefault(finding => finding.Factor == factor);
        var against = ComparisonView.AgainstReference(document);
        var ids = RankedRow.Of(document).Select(row => row.Condition.Id).ToList();
        return new CompareView
        {
            Ids = ids,
            Pair = PairView.Of(document, a, b),
            Factor = found,
            Contrasts = found is null ? null : document with { Comparisons = [.. found.Contrasts.Select(contrast => contrast.Comparison)] },
            FactorWords = found is null ? null : new XElement("div", LayersSection.Content(found)),
            AgainstReference = against.Count == 0 ? null : document with { Comparisons = [.. against.OrderBy(pair => ids.IndexOf(pair.A))] },
            Matrix = VerdictMatrix.Of(document),
        };
    }
}
