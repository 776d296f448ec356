using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>Who is steadiest, by spread, and who is late most often.</summary>
public static class SteadiestSentences
{
    /// <summary>The sentences; none where nothing can be compared.</summary>
    public static IEnumerable<string> Of(FindingsDocument document)
    {
        var others = document.Conditions.Where(condition => !condition.IsReference).ToList();
        var bySpread = others
            .Where(condition => condition.Spread is Estimate<LatencyDifference>)
            .OrderBy(condition => Spread(condition).Value)
            .ToList();
        if (bySpread.Count > 1)
        {
            var first = bySpread[0];
            var apart = document.Reference is null ? "" : ", the reference apart,";
            yield return $"The smallest spread (p95 less p5){apart} is that of {first.Id}: {EstimateWording.Claim(Spread(first), Quantity.Scatter)}.";
            var overlapping = bySpread.Skip(1).Where(condition => Spread(condition).Interval.Low <= Spread(first).Interval.High).Select(condition => condition.Id).ToList();
            yield return overlapping.Count switch
            {
                0 => "No other interval of a spread overlaps with it.",
                1 => $"The interval of {overlapping[0]} overlaps with it, so their order is open.",
                _ => $"The intervals of {Listing.And(overlapping)} overlap with it, so their order is open.",
            };
        }

        var latest = others
            .Where(condition => condition.LateShare is Estimate<Proportion> { Value.Value: > 0 } && condition.LateBeyond is not null)
            .MaxBy(condition => ((Estimate<Proportion>)condition.LateShare).Value);
        if (latest is { LateBeyond: { } beyond })
        {
            var lead = others.Count > 1 ? "The largest late share is that of" : "The late share of";
            var verb = others.Count > 1 ? ":" : " is";
            yield return $"{lead} {latest.Id}{verb} {EstimateWording.ClaimOrLack(latest.LateShare, Quantity.Share)}. Late there: {beyond.Definition}, which is {Milliseconds(beyond.Threshold.Milliseconds)}.";
        }
    }

    private static Estimate<LatencyDifference> Spread(ConditionFinding condition) => (Estimate<LatencyDifference>)condition.Spread;
}
