using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Studies;

/// <summary>Counts the trials of a session and tells which are used, with the study file's exclusions.</summary>
public static class SessionTally
{
    /// <summary>Counts each trial exactly once. An excluded trial counts as excluded whatever its outcome.</summary>
    /// <param name="session">The session.</param>
    /// <param name="exclusions">The exclusions of the study file; those of other sessions do not matter.</param>
    public static SessionCounts Of(SessionData session, IEnumerable<Exclusion> exclusions)
    {
        ArgumentNullException.ThrowIfNull(session);
        var ranges = ExcludedRanges.Of(session.Record.Key, exclusions);
        long used = 0, missed = 0, early = 0, refused = 0, excluded = 0;
        var trials = session.Trials;
        for (var i = 0; i < trials.Count; i++)
        {
            var trial = trials[i];
            if (ranges.Contain(trial.Sequence))
            {
                excluded++;
                continue;
            }

            switch (trial.Outcome)
            {
                case Outcome.Response: used++; break;
                case Outcome.Missed: missed++; break;
                case Outcome.Early: early++; break;
                default: refused++; break;
            }
        }

        return new SessionCounts(used, missed, early, refused, excluded);
    }

    /// <summary>The trials that enter the statistics: responses that are not excluded, in order.</summary>
    public static IEnumerable<Trial> Used(SessionData session, IEnumerable<Exclusion> exclusions) =>
        NotExcluded(session, exclusions).Where(trial => trial.Outcome == Outcome.Response);

    /// <summary>The trials that are not excluded, whatever their outcome, in order.</summary>
    public static IEnumerable<Trial> NotExcluded(SessionData session, IEnumerable<Exclusion> exclusions)
    {
        ArgumentNullException.ThrowIfNull(session);
        var ranges = ExcludedRanges.Of(session.Record.Key, exclusions);
        return session.Trials.Where(trial => !ranges.Contain(trial.Sequence));
    }

    private sealed class ExcludedRanges(Exclusion[] ranges)
    {
        public static ExcludedRanges Of(SessionKey key, IEnumerable<Exclusion> exclusions) =>
            new([.. exclusions.Where(exclusion => exclusion.Session == key)]);

        public bool Contain(long sequence)
        {
            foreach (var range in ranges)
            {
                if (sequence >= (range.FirstSequence ?? 1) && sequence <= (range.LastSequence ?? long.MaxValue))
                {
                    return true;
                }
            }

            return false;
        }
    }
}
