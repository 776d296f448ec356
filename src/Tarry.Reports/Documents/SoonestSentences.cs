using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Quality;
using Tarry.Reports.Figures;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>Who is soonest, by how well known a mean, and who ties with it.</summary>
public static class SoonestSentences
{
    /// <summary>The sentences; at least one.</summary>
    public static IEnumerable<string> Of(FindingsDocument document)
    {
        var rows = RankedRow.Of(document);
        var ranked = rows.Where(row => row.Mean is not null).ToList();
        if (ranked.Count == 0)
        {
            yield return "No condition has enough data for a mean.";
            yield break;
        }

        if (rows.Count == 1)
        {
            yield return $"{rows[0].Condition.Id} has a mean of {Claim(rows[0])}. With one condition there is nothing to compare it with.";
            yield break;
        }

        var soonest = ranked.FirstOrDefault(row => !row.Condition.IsReference);
        if (ranked[0].Condition.IsReference)
        {
            yield return $"The reference, {ranked[0].Condition.Id}, has the lowest mean: {Claim(ranked[0])}.";
        }

        if (soonest is not null)
        {
            foreach (var sentence in About(document, soonest, ranked))
            {
                yield return sentence;
            }
        }

        if (ranked.Count > 2 && ranked[^1] != soonest)
        {
            yield return $"{ranked[^1].Condition.Id} has the highest mean: {Claim(ranked[^1])}.";
        }

        var unranked = rows.Where(row => row.Mean is null).Select(row => row.Condition.Id).ToList();
        if (unranked.Count > 0)
        {
            yield return $"There is not enough data for a mean of {Listing.And(unranked)}.";
        }
    }

    private static IEnumerable<string> About(FindingsDocument document, RankedRow soonest, List<RankedRow> ranked)
    {
        var id = soonest.Condition.Id;
        yield return (ranked[0] == soonest, ranked.Count) switch
        {
            (true, 1) => $"{id} has a mean of {Claim(soonest)}.",
            (true, _) => $"{id} has the lowest mean: {Claim(soonest)}.",
            (false, 2) => $"The other condition, {id}, has a mean of {Claim(soonest)}.",
            _ => $"Of the other conditions, {id} has the lowest mean: {Claim(soonest)}.",
        };
        foreach (var caution in soonest.Condition.Cautions.Where(caution => caution.Kind == CautionKind.LossFavours))
        {
            yield return CautionWording.Sentence(caution);
        }

        var pairs = ranked
            .Where(row => row != soonest && !row.Condition.IsReference)
            .Select(row => ComparisonView.Find(document, id, row.Condition.Id))
            .OfType<ComparisonFinding>()
            .ToList();
        var margin = Milliseconds(document.MarginMs);
        if (Others(pairs, Verdict.NoDifferenceThatMatters) is { Length: > 0 } same)
        {
            yield return $"It is not told from {same}, and any difference lies inside the margin of {margin} ({VerdictSentence.SmallBy}).";
        }

        if (Others(pairs, Verdict.BelowMargin) is { Length: > 0 } below)
        {
            yield return $"It is told from {below}, but by less than the margin of {margin} ({VerdictSentence.SmallBy}).";
        }

        if (Others(pairs, Verdict.Undecided) is { Length: > 0 } open)
        {
            yield return $"Whether it differs from {open} is undecided.";
        }

        var slower = pairs.Count(pair => pair.Verdict == Verdict.Faster);
        if (slower > 0)
        {
            yield return slower == pairs.Count
                ? $"It is faster than {(slower == 1 ? "the other condition" : $"all {Whole(slower)} others")}{Apart(document)}."
                : $"It is faster than {Count(slower, "further condition")}.";
        }
    }

    private static string Apart(FindingsDocument document) => document.Reference is null ? "" : " apart from the reference";

    private static string Others(List<ComparisonFinding> pairs, Verdict verdict) =>
        Listing.And([.. pairs.Where(pair => pair.Verdict == verdict).Select(pair => pair.B)]);

    private static string Claim(RankedRow row) => EstimateWording.ClaimOrLack(row.Condition.Mean, Quantity.Latency);
}
