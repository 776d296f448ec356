using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>What one sitting cannot say.</summary>
internal static class OneSittingSentences
{
    /// <summary>The sentences; none where every mean rests on several sessions.</summary>
    public static IEnumerable<string> Of(FindingsDocument document)
    {
        var known = document.Conditions.Where(condition => condition.Mean is Estimate<Latency>).ToList();
        var once = known.Where(condition => condition.Mean is Estimate<Latency> { Sessions: 1 }).ToList();
        if (once.Count == 0)
        {
            yield break;
        }

        var subject = once.Count == known.Count
            ? once.Count == 1 ? "The condition was" : "Every condition was"
            : $"{Listing.And([.. once.Select(condition => condition.Id)])} {(once.Count == 1 ? "was" : "were")}";
        var owner = once.Count == known.Count && once.Count > 1 ? "each interval" : once.Count == 1 ? "the interval" : "their intervals";
        var holds = once.Count > 1 && once.Count < known.Count ? "hold" : "holds";
        yield return $"{subject} measured in one session only; {owner} {holds} within that sitting and {(holds == "hold" ? "do" : "does")} not cover re-plugging, another day or another host start.";
        foreach (var condition in once.Where(condition => condition.MeanWithBetweenSessions is not null))
        {
            yield return Widened(condition, condition.MeanWithBetweenSessions!);
        }
    }

    private static string Widened(ConditionFinding condition, Estimate<Latency> mean) =>
        $"With the between-session scatter of the other conditions added, the mean of {condition.Id} is {EstimateWording.Value(mean, Quantity.Latency)}{NoBreakSpace}ms ({Level(mean.Level)} interval {EstimateWording.Bounds(mean, Quantity.Latency)}; {EstimateWording.Basis(mean.Sessions, mean.Trials)}, scatter borrowed).";
}
