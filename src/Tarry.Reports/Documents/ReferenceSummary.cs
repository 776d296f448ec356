using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>Every condition relative to the reference, grouped by verdict.</summary>
internal static class ReferenceSummary
{
    /// <summary>Paragraphs and lists.</summary>
    public static IEnumerable<XElement> Of(FindingsDocument document)
    {
        if (document.Reference is not { } reference)
        {
            yield return Html.Paragraph("The study names no reference condition. Latencies are those of the whole chain from the contact to the sensor, not of the devices alone.");
            yield break;
        }

        var pairs = ComparisonView.AgainstReference(document);
        if (pairs.Count == 0)
        {
            var lacking = document.Conditions.Any(condition => condition.Id == reference)
                ? "no other condition is compared with it"
                : "it has no data";
            yield return Html.Paragraph($"The reference is {reference}; {lacking}.");
            yield break;
        }

        yield return Html.Subheading($"Relative to the reference, {reference}");
        yield return Html.Paragraph($"Mean less the mean of {reference}, within sittings; the margin is {Milliseconds(document.MarginMs)}.");
        var list = new XElement("dl");
        foreach (var (term, members) in Groups(pairs))
        {
            list.Add(new XElement("dt", term), members.Select(pair => new XElement("dd", PlainText.Clean(Line(pair)))));
        }

        yield return list;
    }

    private static IEnumerable<(string Term, IReadOnlyList<ComparisonFinding> Members)> Groups(IReadOnlyList<ComparisonFinding> pairs)
    {
        var known = pairs.Where(pair => pair.Difference is Estimate<LatencyDifference>).ToList();
        var unknown = pairs.Where(pair => pair.Difference is not Estimate<LatencyDifference>).ToList();
        foreach (var verdict in Enum.GetValues<Verdict>())
        {
            var members = known.Where(pair => pair.Verdict == verdict).OrderBy(pair => ((Estimate<LatencyDifference>)pair.Difference).Value).ToList();
            if (members.Count > 0)
            {
                yield return (Term(verdict), members);
            }
        }

        if (unknown.Count > 0)
        {
            yield return ("Cannot be compared", unknown);
        }
    }

    private static string Term(Verdict verdict) => verdict switch
    {
        Verdict.Slower => "Slower than the reference",
        Verdict.Faster => "Faster than the reference",
        Verdict.BelowMargin => "Told from the reference, but by less than the margin",
        Verdict.NoDifferenceThatMatters => "No difference that matters",
        Verdict.Undecided => "Undecided",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "A verdict without words."),
    };

    private static string Line(ComparisonFinding pair)
    {
        var line = $"{pair.A}: {EstimateWording.ClaimOrLack(pair.Difference, Quantity.Difference)}.";
        return pair.Verdict == Verdict.Undecided && pair.Difference is Estimate<LatencyDifference>
            ? $"{line} {VerdictSentence.Open(pair)}"
            : line;
    }
}
