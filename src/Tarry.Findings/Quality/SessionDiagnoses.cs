using Tarry.Findings.Samples;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Drift;

namespace Tarry.Findings.Quality;

/// <summary>Tests every session of a study for dependence and change, with the study's sessions as one family.</summary>
/// <remarks>Each test rejects at 0.005 by Holm over the sessions: a single 5 % test on each would accuse clean ones.</remarks>
internal static class SessionDiagnoses
{
    private const double Level = 0.005;
    private const int FewestTrials = 100;
    private const int FewForQuantiles = 200;

    public static IReadOnlyList<SessionDiagnosis> Of(
        IReadOnlyList<SessionSample> sessions,
        Func<string, double?> reportHz)
    {
        var timed = sessions.Where(session => reportHz(session.Key.Condition) is not null && PressTiming.HasEnough(session)).ToList();
        var locks = timed.ConvertAll(session => PressTiming.Lock(session, 1000 / reportHz(session.Key.Condition)!.Value));
        var lockP = HolmAdjustment.Adjust(locks.Select(test => test.P).ToArray());
        var tested = sessions.Where(session => session.Latencies.Count >= FewestTrials && Varies(session)).ToList();
        var dependence = HolmAdjustment.Adjust(tested.Select(DependenceP).ToArray());
        var changes = tested.Select(session => RankCusum.Test(session.Latencies.InOrder)).ToList();
        var change = HolmAdjustment.Adjust(changes.Select(test => test.P).ToArray());

        return sessions.Select(session =>
        {
            var cautions = new List<Caution>();
            var index = tested.IndexOf(session);
            if (index >= 0 && change[index] < Level)
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

            cautions.AddRange(PressTiming.Lattice(session));
            var place = timed.IndexOf(session);
            if (place >= 0 && PressTiming.LockCaution(session, 1000 / reportHz(session.Key.Condition)!.Value, locks[place], lockP[place]) is { } locked)
            {
                cautions.Add(locked);
            }

            cautions.AddRange(FromTheRecord(session));
            return new SessionDiagnosis(session, cautions);
        }).ToList();
    }

    private static double DependenceP(SessionSample session)
    {
        var latencies = session.Latencies.InOrder;
        return Math.Min(1, 2 * Math.Min(BatchVarianceTest.Of(latencies).P, LjungBox.TestRanks(latencies).P));
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
