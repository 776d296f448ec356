using Tarry.Findings.Quality;
using Tarry.Metrology;
using Tarry.Statistics.Descriptives;

namespace Tarry.Findings.Comparisons;

/// <summary>Refuses a verdict whose grounds are undone: the estimate stays, with the cautions because of which nothing is said.</summary>
/// <remarks>
/// <list type="bullet">
/// <item>A verdict rests on at least two sittings (of either condition, where they share none) in which no session drifts, jumps,
/// depends or keeps step with the device.</item>
/// <item>A condition that loses 0.5 % of its presses or more, and more than the other, is called faster only where it were faster
/// still had each lost response come as late as the latest that did come; it is called alike or told within the margin only where
/// that would add less than the margin. A lost response may be later than any that came, so this is the least that is asked for.</item>
/// </list>
/// </remarks>
internal sealed class VerdictGrounds(IReadOnlyDictionary<string, SessionDiagnosis[]> diagnoses)
{
    private const int FewestSound = 2;

    /// <summary>The sessions' cautions that leave fewer than two sound sittings; empty where there are two, or were too few from the start.</summary>
    public IReadOnlyList<Caution> Undoing(PairEvidence evidence)
    {
        var pair = evidence.Pair;
        if (evidence.Difference is null)
        {
            return [];
        }

        var together = pair.Sittings.Count > 0;
        var sessionsOfA = Sessions(pair.A, together ? pair.Sittings : [.. pair.A.Sittings.Keys]);
        var sessionsOfB = Sessions(pair.B, together ? pair.Sittings : [.. pair.B.Sittings.Keys]);
        var sound = together
            ? pair.Sittings.Count(sitting => sessionsOfA.Concat(sessionsOfB).Where(session => session.Session.Key.Sitting == sitting).All(IsSound))
            : Math.Min(sessionsOfA.Count(IsSound), sessionsOfB.Count(IsSound));
        return sound >= FewestSound ? [] : [.. sessionsOfA.Concat(sessionsOfB).SelectMany(session => session.Undoing)];
    }

    /// <summary>The comparison, its verdict refused where its grounds are undone.</summary>
    public ComparisonFinding Checked(ComparisonFinding comparison, PairEvidence evidence)
    {
        var undoing = Undoing(evidence);
        var refusal = undoing.Count > 0 ? undoing : [.. Loss(comparison)];
        return refusal.Count == 0
            ? comparison with { Refusal = [] }
            : comparison with { Verdict = Verdict.Undecided, Needed = null, Refusal = refusal };
    }

    private static bool IsSound(SessionDiagnosis session) => session.Undoing.Count == 0;

    private List<SessionDiagnosis> Sessions(SessionMeans condition, IReadOnlyList<string> sittings) =>
        [.. diagnoses[condition.Id].Where(session => sittings.Contains(session.Session.Key.Sitting))];

    private IEnumerable<Caution> Loss(ComparisonFinding comparison)
    {
        if (comparison.Difference is not Estimate<LatencyDifference> difference)
        {
            yield break;
        }

        var (lossOfA, lossOfB) = (LossOf(comparison.A), LossOf(comparison.B));
        foreach (var (id, loss, other, faster) in new[]
        {
            (comparison.A, lossOfA, lossOfB, Verdict.Faster),
            (comparison.B, lossOfB, lossOfA, Verdict.Slower),
        })
        {
            if (loss.Share < ConditionCautions.LossFavoursFrom || loss.Share <= other.Share)
            {
                continue;
            }

            var overturned = comparison.Verdict switch
            {
                Verdict.NoDifferenceThatMatters or Verdict.BelowMargin => loss.AddedMs >= comparison.MarginMs,
                _ when comparison.Verdict == faster => loss.AddedMs >= Math.Abs(difference.Value.Milliseconds),
                _ => false,
            };
            if (overturned)
            {
                yield return new Caution(CautionKind.LossFavours, id, new Dictionary<string, double> { ["missed_percent"] = 100 * loss.Share });
            }
        }
    }

    // How much the mean would grow, had each lost response come as late as the latest that came.
    private (double Share, double AddedMs) LossOf(string condition)
    {
        var sessions = diagnoses[condition].Select(diagnosis => diagnosis.Session.Latencies).Where(latencies => latencies.Count > 0).ToList();
        var missed = sessions.Sum(latencies => (double)latencies.Missed);
        var share = missed / (missed + sessions.Sum(latencies => latencies.Count));
        return (share, share * (sessions.Max(latencies => latencies.Sorted[^1]) - sessions.Average(latencies => Moments.Mean(latencies.InOrder))));
    }
}
