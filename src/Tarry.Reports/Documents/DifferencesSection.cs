using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>The tables of pairs: against the reference, and all the others behind a fold.</summary>
internal static class DifferencesSection
{
    /// <summary>The section, or null where there is no pair.</summary>
    public static XElement? Build(FindingsDocument document)
    {
        var withReference = ComparisonView.AgainstReference(document);
        var others = ComparisonView.WithoutReference(document);
        if (withReference.Count + others.Count == 0)
        {
            return null;
        }

        var lead = $"A difference is the mean of the first less the mean of the second: positive where the first is slower. Told: the p, adjusted after Holm over all {Count(document.Comparisons.Count, "pair")} of the study, is below 0.05. Small: the 90{NoBreakSpace}% interval lies inside the margin of {Milliseconds(document.MarginMs)} to either side.";
        return Html.Section(
            "differences",
            "Differences",
            Html.Paragraph(lead),
            withReference.Count == 0 ? null : Table($"Each condition against the reference, {document.Reference}.", withReference),
            others.Count == 0 ? null : withReference.Count == 0
                ? Table("Every pair.", others)
                : Html.Details(others.Count == 1 ? "The pair without the reference" : $"All {Whole(others.Count)} pairs without the reference", [Table("Every pair without the reference.", others)]));
    }

    private static XElement Table(string caption, IReadOnlyList<ComparisonFinding> pairs)
    {
        var table = new HtmlTable(
            $"{caption} Intervals at 95{NoBreakSpace}% unless a cell names another level.",
            "pair",
            "difference, ms",
            "adjusted p",
            "verdict",
            "tells from, ms",
            "it would take");
        foreach (var pair in pairs)
        {
            table.Add(
                new($"{pair.A} against {pair.B}", pair.Difference is Estimate<LatencyDifference> estimate ? EstimateWording.Basis(estimate.Sessions, estimate.Trials) : ""),
                [
                    TableCell.Of(pair.Difference, Quantity.Difference),
                    pair.AdjustedP is { } p ? new TableCell(Probability(p)) : new TableCell("not known", "one sitting"),
                    TableCell.Words(VerdictSentence.InBrief(pair)),
                    pair.MinimumDetectable is { } detectable ? new TableCell(Fixed(detectable.Milliseconds, 2)) : new TableCell("not known"),
                    TableCell.Words(pair.Needed is { } needed ? VerdictSentence.Design(needed) : pair.IsRefused ? "sound sittings" : pair.Verdict == Verdict.Undecided ? "further sittings" : "nothing more"),
                ]);
        }

        return table.Element;
    }
}
