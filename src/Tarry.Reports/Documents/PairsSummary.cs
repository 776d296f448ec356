using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>How many pairs are told apart, and what the undecided ones would take.</summary>
public static class PairsSummary
{
    private const int MostSentences = 6;

    /// <summary>Paragraphs and a list; nothing where no pair is undecided.</summary>
    public static IEnumerable<XElement> Of(FindingsDocument document)
    {
        var others = ComparisonView.WithoutReference(document).Where(pair => pair.Verdict == Verdict.Undecided).ToList();
        if (others.Count == 0)
        {
            yield break;
        }

        yield return Html.Subheading(document.Reference is null ? "Undecided pairs" : "Undecided pairs without the reference");
        var open = others.Where(pair => pair.AdjustedP is not null).ToList();
        if (open.Count > 0)
        {
            yield return Html.List(open.Take(MostSentences).Select(VerdictSentence.Of));
        }

        if (open.Count > MostSentences)
        {
            yield return Html.Paragraph($"{Count(open.Count - MostSentences, "more undecided pair")} {(open.Count - MostSentences == 1 ? "stands" : "stand")} in the table of differences.");
        }

        if (others.Count > open.Count)
        {
            yield return Html.Paragraph(WithoutScatter(others.Count - open.Count));
        }
    }

    private static string WithoutScatter(int count) =>
        $"{Count(count, "pair")} {(count == 1 ? "is" : "are")} undecided because {(count == 1 ? "it has" : "they have")} fewer than two sittings in common, which does not show how much the difference changes from sitting to sitting. Measure the two of a pair together in at least two more.";

    /// <summary>How many pairs there are of each verdict, in one sentence.</summary>
    public static string Tally(IReadOnlyList<ComparisonFinding> pairs, double marginMs)
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
