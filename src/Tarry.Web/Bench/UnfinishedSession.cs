using Tarry.Studies;
using Tarry.Studies.OpenRuns;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Bench;

/// <summary>A session whose journal is on the disk and not sealed.</summary>
/// <param name="Key">Which.</param>
/// <param name="Trials">Trials that are on the disk.</param>
/// <param name="Asked">What its run was asked for, as far as that is known; null where it cannot be read.</param>
/// <param name="TargetIsKnown">Whether the target is known too; else the run goes on until it is stopped, or until a target is given.</param>
/// <param name="Problem">Why it cannot be read; null where it can.</param>
public sealed record UnfinishedSession(SessionKey Key, long Trials, OpenRun? Asked, bool TargetIsKnown, StudyException? Problem)
{
    /// <summary>Those of a study.</summary>
    /// <param name="study">The study.</param>
    /// <param name="port">The port for a run that does not say its own.</param>
    public static IReadOnlyList<UnfinishedSession> Of(Study study, string port)
    {
        ArgumentNullException.ThrowIfNull(study);
        return [.. study.SessionKeys.Where(key => !study.IsSealed(key)).Select(key => Read(study, key, port))];
    }

    private static UnfinishedSession Read(Study study, SessionKey key, string port)
    {
        try
        {
            var session = study.Read(key);
            var kept = study.OpenRunOf(key);

            // How it pressed is the record's to say: what goes on must be of the same settings.
            var asked = kept is not null && session.Record.Run is { } run ? kept with { Run = run } : EarlierSettings.Of(session.Record, port);
            return new UnfinishedSession(key, session.Trials.Count, asked, kept is not null, null);
        }
        catch (StudyException problem)
        {
            return new UnfinishedSession(key, 0, null, false, problem);
        }
    }
}
