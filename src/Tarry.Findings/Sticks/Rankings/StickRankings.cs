using Tarry.Findings.Comparisons;
using Tarry.Findings.Conditions;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Comparisons;

namespace Tarry.Findings.Sticks.Rankings;

/// <summary>Ranks conditions by each measure that prefers one stick to another, by simultaneous Tukey-Kramer intervals of all pairs as for latencies.</summary>
internal static class StickRankings
{
    public static IReadOnlyList<StickRanking> Of(IReadOnlyList<(string Id, IReadOnlyList<StickEvidence> Evidence)> conditions) =>
    [
        .. conditions.SelectMany(condition => condition.Evidence.Select(evidence => (condition.Id, Evidence: evidence)))
            .Where(entry => StickMeasureText.Of(entry.Evidence.Measure).Preference != StickPreference.None && entry.Evidence.Method != StickMethodName.NotToldFromNone)
            .GroupBy(entry => (entry.Evidence.Measure, entry.Evidence.Part))
            .Where(group => group.Count() > 1)
            .OrderBy(group => group.Key.Measure).ThenBy(group => group.Key.Part)
            .Select(group => Ranked(group.Key.Measure, group.Key.Part, [.. group])),
    ];

    private static StickRanking Ranked(StickMeasure measure, StickPart part, (string Id, StickEvidence Evidence)[] entries)
    {
        var scores = entries.Select(entry => Score(entry.Evidence)).ToArray();
        var differences = new MeanDifference?[entries.Length, entries.Length];
        for (var a = 0; a < entries.Length; a++)
        {
            for (var b = a + 1; b < entries.Length; b++)
            {
                differences[a, b] = Difference(entries[a].Evidence, scores[a], entries[b].Evidence, scores[b]);
            }
        }

        var told = RankSets.Told(differences, Estimates.Level);
        return new StickRanking(measure, part, Places(entries, scores, told), Pairs(entries, differences));
    }

    // Small is best: sizes without their sign, and what should be great turned round.
    private static double Score(StickEvidence evidence) => StickMeasureText.Of(evidence.Measure) switch
    {
        { Preference: StickPreference.Greater } => -evidence.Value,
        { Kind: StickValueKind.EitherSign } => Math.Abs(evidence.Value),
        _ => evidence.Value,
    };

    private static MeanDifference? Difference(StickEvidence a, double scoreOfA, StickEvidence b, double scoreOfB)
    {
        if (a.Readings.Count < 2 || b.Readings.Count < 2)
        {
            return null;
        }

        return WelchDifference.OfVariances(scoreOfA - scoreOfB, Variance(a), Math.Max(1, a.DegreesOfFreedom), Variance(b), Math.Max(1, b.DegreesOfFreedom));
    }

    private static double Variance(StickEvidence evidence) =>
        (evidence.StandardError * evidence.StandardError) + (evidence.Common * evidence.Common) + (evidence.Resolution * evidence.Resolution / 3);

    private static List<RankedCondition> Places((string Id, StickEvidence Evidence)[] entries, double[] scores, bool[,] told)
    {
        var sets = RankSets.Of(told);
        var places = new List<RankedCondition>(entries.Length);
        var (group, first) = (0, -1);
        foreach (var index in Enumerable.Range(0, entries.Length).OrderBy(index => scores[index]).ThenBy(index => entries[index].Id, StringComparer.Ordinal))
        {
            if (first < 0 || told[first, index])
            {
                (group, first) = (group + 1, index);
            }

            places.Add(new RankedCondition(entries[index].Id, sets[index].Best, sets[index].Worst, group));
        }

        return places;
    }

    private static List<StickComparison> Pairs((string Id, StickEvidence Evidence)[] entries, MeanDifference?[,] differences)
    {
        var pairs = Enumerable.Range(0, entries.Length).SelectMany(a => Enumerable.Range(a + 1, entries.Length - a - 1).Select(b => (A: a, B: b))).ToList();
        var adjusted = new Queue<double>(HolmAdjustment.Adjust([.. pairs.Select(pair => differences[pair.A, pair.B]).OfType<MeanDifference>().Select(difference => difference.TwoSidedP)]));
        return [.. pairs.Select(pair => differences[pair.A, pair.B] is { } difference
            ? Compared(entries[pair.A], entries[pair.B], difference, adjusted.Dequeue())
            : new StickComparison(entries[pair.A].Id, entries[pair.B].Id, new StickRefusal(StickRefusalReason.TooFewReplicates, 1, 2), false, null))];
    }

    private static StickComparison Compared((string Id, StickEvidence Evidence) a, (string Id, StickEvidence Evidence) b, MeanDifference difference, double adjusted)
    {
        var limits = difference.Limits(Estimates.Level);
        var text = StickMeasureText.Of(a.Evidence.Measure);
        var (value, low, high) = text.Preference == StickPreference.Greater ? (-difference.Difference, -limits.High, -limits.Low) : (difference.Difference, limits.Low, limits.High);
        var isRatio = text.Kind == StickValueKind.Size;
        (value, low, high) = isRatio ? (Math.Exp(value), Math.Exp(low), Math.Exp(high)) : (value, low, high);
        var sessions = a.Evidence.Readings.Count + b.Evidence.Readings.Count;
        var estimate = new StickEstimate(value, low, high, Estimates.Level, StickMethodName.OverSessions, sessions, "sessions", sessions, difference.StandardError, difference.DegreesOfFreedom);
        return new StickComparison(a.Id, b.Id, estimate, isRatio, adjusted);
    }
}
