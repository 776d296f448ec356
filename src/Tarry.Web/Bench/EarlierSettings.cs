using Tarry.Studies;
using Tarry.Studies.OpenRuns;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Bench;

/// <summary>Settings and bench notes of sessions that are there, so that nobody fills them in twice.</summary>
public static class EarlierSettings
{
    /// <summary>Those of a session, as far as its record has them; null of an import.</summary>
    /// <param name="record">The session's record.</param>
    /// <param name="port">The port, which the record does not have.</param>
    public static OpenRun? Of(SessionRecord record, string port)
    {
        ArgumentNullException.ThrowIfNull(record);
        return record.Run is not { } run ? null : new OpenRun
        {
            Port = port,
            Run = run,
            Host = record.Host,
            Application = record.Application,
            FrameCapHz = record.FrameCapHz,
            RefreshHz = record.RefreshHz,
            Battery = record.Battery,
            RoomNotes = record.RoomNotes,
        };
    }

    /// <summary>Those of a captured session of a sitting, or of any where the sitting has none; null where nothing was captured.</summary>
    /// <exception cref="StudyException">The session cannot be read.</exception>
    public static (SessionKey Key, OpenRun Asked)? Latest(Study study, string? sitting, string port)
    {
        ArgumentNullException.ThrowIfNull(study);
        foreach (var key in study.SessionKeys.Where(study.IsSealed).OrderByDescending(key => key.Sitting == sitting).ThenByDescending(key => key))
        {
            if (Of(study.Read(key).Record, port) is { } asked)
            {
                return (key, asked);
            }
        }

        return null;
    }
}
