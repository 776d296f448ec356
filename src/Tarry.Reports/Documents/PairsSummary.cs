using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>How many pairs are told apart, and what the open ones would take.</summary>
internal static class PairsSummary
{
    private const int MostSentences = 6;

    /// <summary>Paragraphs and a list; nothing where there is no pair.</summary>
    public static IEnumerable<XElement> Of(FindingsDocument document)
    {
        var pairs = document.Comparisons;
        if (pairs.Count == 0)
        {
            yield break;
        }

        yield return Html.Subheading("All pairs");
        yield return Html.Paragraph(Tally(pairs, document.MarginMs));
        var open = ComparisonView.WithoutReference(document).Where(pair => pair.Verdict == Verdict.Undecided).ToList();
        if (open.Count == 0)
        {
            yield break;
        }

        var lead = document.Reference is null ? "Undecided:" : "Undecided among the others:";
        yield return Html.Paragraph(lead);
        yield return Html.List(open.Take(MostSentences).Select(VerdictSentence.Of));
        if (open.Count > MostSentences)
        {
            yield return Html.Paragraph($"{Count(open.Count - MostSentences, "more undecided pair")} {(open.Count - MostSentences == 1 ? "stands" : "stand")} in the table of differences.");
        }
    }

    internal static string Tally(IReadOnlyList<ComparisonFinding> pairs, double marginMs)
    {
        var margin = Milliseconds(marginMs);
        var told = pairs.Count(pair => pair.Verdict is Verdict.Slower or Verdict.Faster);
        var below = pairs.Count(pair => pair.Verdict == Verdict.BelowMargin);
        var same = pairs.Count(pair => pair.Verdict == Verdict.NoDifferenceThatMatters);
        var open = pairs.Count(pair => pair.Verdict == Verdict.Undecided);
        if (pairs.Count == 1)
        {
            return VerdictSentence.Of(pairs[0]);
        }

        List<string> parts = [];
        AddPart(told, "told apart and not shown to lie within the margin");
        AddPart(below, $"told apart by less than the margin of {margin}");
        AddPart(same, $"not told apart, with any difference inside the margin of {margin}");
        AddPart(open, "undecided");
        return $"Of {Count(pairs.Count, "pair")} of conditions, {string.Join("; ", parts)}.";

        void AddPart(int count, string what)
        {
            if (count > 0)
            {
                parts.Add($"{Whole(count)} {(count == 1 ? "is" : "are")} {what}");
            }
        }
    }
}
