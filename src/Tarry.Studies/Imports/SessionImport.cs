using Tarry.Studies.Disk;
using Tarry.Studies.Reports;
using Tarry.Studies.Sealing;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Imports;

/// <summary>Seals the sessions of one import: all of them or none.</summary>
internal static class SessionImport
{
    /// <summary>Refuses what cannot be imported, before anything is made.</summary>
    /// <returns>The entry that each session will have.</returns>
    public static IReadOnlyList<ImportedSession> Check(
        StudyPaths paths,
        IReadOnlyList<(SessionRecord Record, IReadOnlyList<Trial> Trials)> sessions,
        ImportRecord import,
        string? replacing)
    {
        RequireKeys([.. sessions.Select(session => RequireNoProcedure(session.Record.Key))], import);
        foreach (var (record, trials) in sessions)
        {
            Check(record, trials);
        }

        var folders = Free(paths, sessions.Select(session => session.Record.Key), SessionDocument.LatencyKind, replacing);
        return [.. sessions.Select(session => Place(session.Record, folders, replacing, (to, entry, record) => SealedSession.Write(to, entry, record, [.. session.Trials.OrderBy(trial => trial.Sequence)])))];
    }

    /// <summary>The same for sessions of the kind <c>reports</c>.</summary>
    public static IReadOnlyList<ImportedSession> Check(StudyPaths paths, IReadOnlyList<ReportSession> sessions, ImportRecord import, string? replacing)
    {
        RequireKeys([.. sessions.Select(session => RequireNoProcedure(session.Record.Key))], import);
        foreach (var session in sessions)
        {
            SegmentRules.Require(session.Record);
            if ((session.Stream.Broken() ?? (session.Reports.IsInOrder ? null : "its ticks go back")) is { } broken)
            {
                throw new ArgumentException($"Session {session.Record.Key} cannot be kept: {broken}.", nameof(sessions));
            }
        }

        var folders = Free(paths, sessions.Select(session => session.Record.Key), SessionDocument.ReportsKind, replacing);
        return [.. sessions.Select(session => Place(session.Record, folders, replacing, (to, entry, record) => SealedReports.Write(to, entry, session with { Record = record })))];
    }

    /// <summary>The same for sessions of the kind <c>stick</c>; a key without a procedure takes that of its session.</summary>
    public static IReadOnlyList<ImportedSession> Check(StudyPaths paths, IReadOnlyList<StickSession> sessions, ImportRecord import, string? replacing)
    {
        foreach (var session in sessions)
        {
            SegmentRules.Require(session.Record);
            if (session.Broken() is { } broken)
            {
                throw new ArgumentException($"Session {session.Record.Key} cannot be kept: {broken}.", nameof(sessions));
            }
        }

        StickSession[] named = [.. sessions.Select(Named)];
        RequireKeys([.. named.Select(session => session.Record.Key)], import);
        var folders = Free(paths, named.Select(session => session.Record.Key), SessionDocument.StickKind, replacing);
        return [.. named.Select(session => Place(session.Record, folders, replacing, (to, entry, record) => SealedStick.Write(to, entry, session with { Record = record })))];
    }

    private static StickSession Named(StickSession session)
    {
        var key = session.Record.Key;
        return session with { Record = session.Record with { Key = new SessionKey(key.Sitting, key.Condition, session.Setup.Procedure) } };
    }

    private static SessionKey RequireNoProcedure(SessionKey key) => key.Procedure is null
        ? key
        : throw new ArgumentException($"Session {key} is named as one of a stick, and holds no positions.", nameof(key));

    private static void RequireKeys(IReadOnlyList<SessionKey> keys, ImportRecord import)
    {
        if (import.Sha256.Length != 64 || !import.Sha256.All(char.IsAsciiHexDigitLower))
        {
            throw new ArgumentException($"'{import.Sha256}' is not a SHA-256 in lower-case hex.", nameof(import));
        }

        if (keys.Count == 0)
        {
            throw new ArgumentException("There is no session to import.", nameof(keys));
        }

        if (keys.GroupBy(key => key).FirstOrDefault(group => group.Count() > 1) is { } twice)
        {
            throw new ArgumentException($"Session {twice.Key} is given twice.", nameof(keys));
        }
    }

    private static SessionFolders Free(StudyPaths paths, IEnumerable<SessionKey> keys, string kind, string? replacing)
    {
        var folders = SessionFolders.Look(paths);
        var there = keys.Where(key => folders.IsTaken(key) && (replacing is null || folders.Current(key) is null || folders.KindOf(key) != kind)).Order().ToList();
        if (there.Count > 0)
        {
            throw new StudyException(
                $"The study has {(there.Count == 1 ? "this session" : "these sessions")} already: {string.Join(", ", there)}. Nothing was imported.",
                paths.Relative(paths.Session(there[0])),
                "Import under another sitting (--sitting), or as a correction of the same kind that says why it replaces the earlier one. Nothing sealed is overwritten.");
        }

        return folders;
    }

    /// <summary>Makes them. What a failure left half-made is removed.</summary>
    /// <param name="paths">The study.</param>
    /// <param name="sessions">The sessions, checked.</param>
    /// <param name="import">The import's record.</param>
    /// <param name="declare">Declares the new conditions in the study file.</param>
    /// <param name="retract">Takes that back.</param>
    public static void Seal(
        StudyPaths paths,
        IReadOnlyList<ImportedSession> sessions,
        ImportRecord import,
        Action declare,
        Action retract)
    {
        var recordPath = ImportRecordFile.FreePath(paths, import.Sha256);
        var note = new UnfinishedImport
        {
            FormatVersion = Study.FormatVersion,
            Sessions = [.. sessions.Select(session => session.Entry.ToString()).Order(StringComparer.Ordinal)],
            RecordPath = paths.Relative(recordPath),
        };
        var declared = false;
        try
        {
            note.Write(paths);
            var hashes = new Dictionary<string, string>();
            foreach (var session in sessions)
            {
                DurableFile.MakeFolder(paths.Sessions);
                DurableFile.MakeFolder(paths.Session(session.Entry));
                foreach (var (file, hash) in session.Write(paths))
                {
                    hashes.Add(file, hash);
                }
            }

            var content = ImportRecordFile.Encode(import with { Sessions = note.Sessions });
            DurableFile.Write(recordPath, content);
            hashes.Add(note.RecordPath, Manifest.Sha256(content));
            declare();
            declared = true;
            Manifest.Read(paths).Enter(paths, hashes);
            note.Settle(paths);
        }
        catch (Exception exception) when (DiskFault.Is(exception) || exception is StudyException)
        {
            Undo(paths, note, declared ? retract : () => { });
            throw exception is StudyException ? exception : DiskFault.Describe(exception, paths.Relative(paths.Sessions), "Nothing was imported.");
        }
    }

    private static ImportedSession Place(
        SessionRecord record, SessionFolders folders, string? replacing, Func<StudyPaths, SessionEntry, SessionRecord, Dictionary<string, string>> write)
    {
        var (entry, placed) = folders.Current(record.Key) is { } earlier && replacing is not null
            ? (earlier.Next, record with { Replaces = new Replacement(earlier.ToString(), replacing) })
            : ((SessionEntry)record.Key, record with { Replaces = null });
        return new ImportedSession(entry, paths => write(paths, entry, placed));
    }

    private static void Undo(StudyPaths paths, UnfinishedImport note, Action retract)
    {
        try
        {
            if (File.Exists(paths.UnfinishedImport))
            {
                retract();
                note.Settle(paths);
            }
        }
        catch (Exception exception) when (DiskFault.Is(exception) || exception is StudyException)
        {
            // The note stays, so nothing of this import is read, and the next writer removes it.
        }
    }

    private static void Check(SessionRecord record, IReadOnlyList<Trial> trials)
    {
        SegmentRules.Require(record);
        var seen = new HashSet<long>();
        foreach (var trial in trials)
        {
            var broken = TrialRules.Broken(trial, record.Segments.Count) ?? (seen.Add(trial.Sequence) ? null : "the sequence number is there twice");
            if (broken is not null)
            {
                throw new ArgumentException($"Trial {trial.Sequence} of session {record.Key} cannot be kept: {broken}.", nameof(trials));
            }
        }
    }
}
