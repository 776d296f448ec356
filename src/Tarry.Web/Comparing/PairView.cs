using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Reports.Merits;
using Tarry.Reports.Wording;

namespace Tarry.Web.Comparing;

/// <summary>Two conditions side by side.</summary>
/// <param name="Pair">The first against the second.</param>
/// <param name="Difference">The findings with this pair alone, for its figure.</param>
/// <param name="Both">The findings with these conditions alone, the first first, for their distributions.</param>
/// <param name="Figures">Their figures of merit.</param>
public sealed record PairView(
    ComparisonFinding Pair,
    FindingsDocument Difference,
    FindingsDocument Both,
    IReadOnlyList<(FigureOfMerit Figure, MeritValue A, MeritValue B)> Figures)
{
    /// <summary>Makes it; null where the study does not have both, or they are one and the same.</summary>
    public static PairView? Of(FindingsDocument document, string? a, string? b)
    {
        ArgumentNullException.ThrowIfNull(document);
        if (a is null || b is null || a == b || ComparisonView.Find(document, a, b) is not { } pair)
        {
            return null;
        }

        var (first, second) = (document.Conditions.Single(condition => condition.Id == a), document.Conditions.Single(condition => condition.Id == b));
        return new PairView(
            pair,
            document with { Comparisons = [pair] },
            document with { Conditions = [first, second] },
            [.. FiguresOfMerit.All.Where(figure => figure.Key != "relative").Select(figure => (figure, figure.Of(first), figure.Of(second)))]);
    }
}
