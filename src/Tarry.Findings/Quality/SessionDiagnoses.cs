using Tarry.Findings.Samples;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Drift;

namespace Tarry.Findings.Quality;

/// <summary>Tests every session of a study for dependence, change and phase lock, with the study's sessions as one family.</summary>
/// <remarks>
/// Each test rejects by Holm over the sessions: a single 5 % test on each would accuse clean ones. Slots and frames of two
/// clocks leave a pattern between neighbours that a portmanteau test finds in long sessions, and that leaves the precision of the
/// mean as it is. So neighbours count only where they are worth plainly fewer independent trials (docs/decisions/0009).
/// </remarks>
internal static class SessionDiagnoses
{
    private const double Level = 0.005;
    private const double ChangeLevel = 0.01;
    private const double PlainlyFewer = 0.8;
    private const double LeastResultant = 0.1;
    private const int FewestTrials = 100;
    private const int FewForQuantiles = 200;

    public static IReadOnlyList<SessionDiagnosis> Of(
        IReadOnlyList<SessionSample> sessions,
        Func<string, double?> reportHz)
    {
        var tested = sessions.Where(session => session.Latencies.Count >= FewestTrials && Varies(session)).ToList();
        var dependence = HolmAdjustment.Adjust(tested.Select(DependenceP).ToArray());
        var changes = tested.Select(session => RankCusum.Test(session.Latencies.InOrder)).ToList();
        var change = HolmAdjustment.Adjust(tested.Zip(changes, (session, test) => ChangeP(session, test.P)).ToArray());
        var locks = sessions.Select(session => PhaseLock.Of(session.PressTimesMs, reportHz(session.Key.Condition))).ToList();
        var locked = new Queue<double>(HolmAdjustment.Adjust(locks.OfType<PhaseLock>().Select(found => found.P).ToArray()));

        return sessions.Select((session, place) =>
        {
            var cautions = new List<Caution>();
            var index = tested.IndexOf(session);
            if (index >= 0 && change[index] < ChangeLevel)
            {
                cautions.Add(ChangeInSession.Describe(session, changes[index].Index));
            }
            else if (index >= 0 && dependence[index] < Level)
            {
                cautions.Add(new Caution(CautionKind.Dependence, session.Key.ToString(), new Dictionary<string, double>
                {
                    ["effective_trials"] = EffectiveSampleSize.Of(session.Latencies.InOrder),
                    ["trials"] = session.Latencies.Count,
                }));
            }

            if (locks[place] is { } found && locked.Dequeue() < Level && found.ResultantLength > LeastResultant)
            {
                cautions.Add(new Caution(CautionKind.PhaseLocked, session.Key.ToString(), new Dictionary<string, double>
                {
                    ["period_ms"] = found.PeriodMs,
                    ["worst_bias_ms"] = found.PeriodMs * found.ResultantLength / Math.PI,
                }));
            }

            cautions.AddRange(PressTiming.Cautions(session));
            cautions.AddRange(FromTheRecord(session));
            return new SessionDiagnosis(session, cautions);
        }).ToList();
    }

    // A level that changes anywhere, or one that is approached from the beginning on.
    private static double ChangeP(SessionSample session, double anywhere) => session.Latencies.Count < WarmUpTest.SmallestCount
        ? anywhere
        : Math.Min(1, 2 * Math.Min(anywhere, WarmUpTest.Of(session.Latencies.InOrder).P));

    private static double DependenceP(SessionSample session)
    {
        var latencies = session.Latencies.InOrder;
        var neighbours = LjungBox.TestRanks(latencies).P;
        if (neighbours < Level && EffectiveSampleSize.Of(latencies) > PlainlyFewer * latencies.Length)
        {
            neighbours = 1;
        }

        return Math.Min(1, 2 * Math.Min(BatchVarianceTest.Of(latencies).P, neighbours));
    }

    private static bool Varies(SessionSample session) =>
        session.Latencies.Sorted[0] < session.Latencies.Sorted[^1];

    private static IEnumerable<Caution> FromTheRecord(SessionSample session)
    {
        var subject = session.Key.ToString();
        if (session.Counts.Used is > 0 and < FewForQuantiles)
        {
            yield return new Caution(CautionKind.TooFewTrials, subject, new Dictionary<string, double>
            {
                ["trials"] = session.Counts.Used,
                ["need"] = FewForQuantiles,
            });
        }

        if (!session.Sealed)
        {
            yield return new Caution(CautionKind.NotFinished, subject, new Dictionary<string, double> { ["trials"] = session.Counts.Captured });
        }

        // A run that was stopped and goes on begins a segment as well, with the rig running all the while.
        var restarts = session.Record.Segments.Zip(session.Record.Segments.Skip(1)).Count(pair => pair.First.BootId != pair.Second.BootId);
        if (restarts > 0)
        {
            yield return new Caution(CautionKind.RigRebooted, subject, new Dictionary<string, double> { ["restarts"] = restarts });
        }

        if (session.Record.Source is null && session.Record.Segments.Any(segment => segment.ClockFit is null))
        {
            yield return new Caution(CautionKind.ClockNotFitted, subject, new Dictionary<string, double>());
        }

        if (session.Counts.Refused > 0)
        {
            yield return new Caution(CautionKind.RefusedRows, subject, new Dictionary<string, double> { ["refused"] = session.Counts.Refused });
        }

        if (session.IntervalCensored)
        {
            yield return new Caution(CautionKind.IntervalCensored, subject, new Dictionary<string, double>());
        }
    }
}
