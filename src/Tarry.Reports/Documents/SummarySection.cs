using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Reports.Wording;
using Tarry.Studies.Sessions;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>The written summary: every claim with its interval, sessions and trials.</summary>
public static class SummarySection
{
    /// <summary>The section.</summary>
    public static XElement Build(FindingsDocument document)
    {
        if (document.Conditions.Count == 0)
        {
            var captured = document.Counts.Captured == 0
                ? "This study has no trials yet."
                : $"No condition of this study has trials yet. {CountsSentence(document.Counts)}";
            return Html.Section("summary", "Summary", Html.Paragraph($"{captured} Capture some with tarry run, or bring them in with tarry import, then write this report again."));
        }

        var cautions = document.Cautions.Count + document.Conditions.Sum(condition => condition.Cautions.Count);
        return Html.Section(
            "summary",
            "Summary",
            Html.Paragraph(string.Join(' ', SoonestSentences.Of(document))),
            Joined(SteadiestSentences.Of(document)),
            Joined(OneSittingSentences.Of(document)),
            document.Comparisons.Count == 0 ? null : Html.Paragraph(PairsSummary.Tally(document.Comparisons, document.MarginMs)),
            Html.Paragraph(CountsSentence(document.Counts)),
            cautions == 0 ? null : CautionsPointer(cautions));
    }

    /// <summary>What became of all captured trials, in one sentence.</summary>
    public static string CountsSentence(SessionCounts counts)
    {
        List<string> rest = [];
        AddPart(counts.Missed, "missed");
        AddPart(counts.Early, "early");
        AddPart(counts.Refused, "refused");
        AddPart(counts.Excluded, "excluded");
        var used = $"{Whole(counts.Used)} {(counts.Used == 1 ? "is" : "are")} used";
        var others = rest.Count == 0 ? "none is missed, early, refused or excluded" : Listing.And(rest);
        return counts.Captured == 1
            ? $"One trial was captured: {(counts.Used == 1 ? "it is used" : rest[0].Replace("1 is", "it is", StringComparison.Ordinal))}."
            : $"Of {Count(counts.Captured, "captured trial")} {used}; {others}.";

        void AddPart(long count, string outcome)
        {
            if (count > 0)
            {
                rest.Add($"{Whole(count)} {(count == 1 ? "is" : "are")} {outcome}");
            }
        }
    }

    private static XElement? Joined(IEnumerable<string> sentences)
    {
        var text = string.Join(' ', sentences);
        return text.Length == 0 ? null : Html.Paragraph(text);
    }

    private static XElement CautionsPointer(int cautions) => new(
        "p",
        new XElement("a", new XAttribute("href", "#cautions"), Count(cautions, "caution")),
        cautions == 1 ? " stands beside these results." : " stand beside these results.");
}
