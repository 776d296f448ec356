using Tarry.Studies.Calibrations;
using Tarry.Studies.Disk;
using Tarry.Studies.Imports;
using Tarry.Studies.Journals;
using Tarry.Studies.OpenRuns;
using Tarry.Studies.Reports;
using Tarry.Studies.Sealing;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Studies;

/// <summary>A study folder: its study file, its sessions and its imports, as <c>docs/study-format.md</c> lays them down.</summary>
/// <remarks>Reading needs no lock. Everything that changes the study asks for the <see cref="StudyLock"/>.</remarks>
public sealed partial class Study
{
    /// <summary>The newest version of the study format that this program reads and the one that it writes.</summary>
    public const int FormatVersion = 1;

    private readonly StudyPaths _paths;
    private readonly StudyFileStore _store;
    private readonly TimeProvider _time;

    private Study(StudyPaths paths, TimeProvider time)
    {
        _paths = paths;
        _time = time;
        _store = new StudyFileStore(paths.StudyFile);
        File = _store.Read();
    }

    /// <summary>The study folder, absolute.</summary>
    public string Folder => _paths.Folder;

    /// <summary>The study file as last read or changed.</summary>
    public StudyFile File { get; private set; }

    /// <summary>The sessions of latencies, sealed and open, sorted by sitting and condition.</summary>
    public IReadOnlyList<SessionKey> SessionKeys => SessionFolders.Look(_paths).KeysOf(SessionDocument.LatencyKind);

    /// <summary>The sessions of the kind <c>reports</c>, sorted by sitting and condition.</summary>
    public IReadOnlyList<SessionKey> ReportSessionKeys => SessionFolders.Look(_paths).KeysOf(SessionDocument.ReportsKind);

    /// <summary>The sessions of the kind <c>stick</c>, sorted by sitting, condition and procedure.</summary>
    public IReadOnlyList<SessionKey> StickKeys => SessionFolders.Look(_paths).KeysOf(SessionDocument.StickKind);

    /// <summary>All its sessions at a glance, sorted by sitting and condition: quick, and unchecked.</summary>
    public IReadOnlyList<SessionOutline> Outline => SessionOutlines.Read(_paths);

    /// <summary>The import records, in order of their file names.</summary>
    public IReadOnlyList<ImportRecord> Imports => ImportRecordFile.ReadAll(_paths);

    /// <summary>The calibrations of the rig by their names, the oldest first.</summary>
    /// <exception cref="StudyDamagedException">One is not what was written.</exception>
    public IReadOnlyList<(string Name, RigCalibration Calibration)> Calibrations => CalibrationFile.ReadAll(_paths);

    /// <summary>Makes a new study in a folder that is empty or not there.</summary>
    /// <param name="folder">Where.</param>
    /// <param name="title">Its title.</param>
    /// <param name="reference">The reference condition's id, which need not be declared yet; null for none.</param>
    /// <param name="marginMs">The smallest difference that matters, in milliseconds, more than zero.</param>
    /// <param name="time">The clock; the system's where none is given.</param>
    /// <exception cref="StudyException">The folder is not empty, or a value is not allowed. Nothing was made.</exception>
    public static Study Create(string folder, string title, string? reference, double marginMs, TimeProvider? time = null)
    {
        var paths = new StudyPaths(folder);
        StudyFolders.Create(paths, StudyFileEditor.New(title, reference, marginMs));
        return new Study(paths, time ?? TimeProvider.System);
    }

    /// <summary>Opens a study. Nothing is changed on the disk.</summary>
    /// <exception cref="StudyException">There is no study, its file has an error (the place says where), or it is of a newer version.</exception>
    public static Study Open(string folder, TimeProvider? time = null)
    {
        var paths = new StudyPaths(folder);
        StudyFolders.RequireStudy(paths);
        return new Study(paths, time ?? TimeProvider.System);
    }

    /// <summary>Takes the right to write to the study. What an earlier program left unfinished is settled.</summary>
    /// <param name="program">How the program calls itself to others, such as <c>tarry run</c>.</param>
    /// <exception cref="StudyLockedException">Another program has it; the message says which.</exception>
    /// <exception cref="StudyDiskException">The folder cannot be written to.</exception>
    public StudyLock AcquireLock(string program)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(program);
        var acquired = StudyLock.Acquire(_paths, program, _time);
        try
        {
            UnfinishedImport.Read(_paths)?.Settle(_paths);
            SessionFolders.Look(_paths).RemoveSealedJournals();
            return acquired;
        }
        catch (Exception exception)
        {
            acquired.Dispose();
            throw DiskFault.Is(exception) ? DiskFault.Describe(exception, _paths.Folder) : exception;
        }
    }

    /// <summary>Whether a session is sealed, or its journal is still open.</summary>
    public bool IsSealed(SessionKey key) => SessionFolders.Look(_paths).Current(key) is not null;

    /// <summary>Reads a session, or the latest correction of it. Sealed files are checked against the manifest; an open journal is recovered in memory and not touched.</summary>
    /// <exception cref="StudyDamagedException">A file is not what was written; the place says which and where.</exception>
    public SessionData Read(SessionKey key) => SessionFolders.Read(_paths, key);

    /// <summary>What a session of latencies is, without its trials; a sealed one is checked against the manifest.</summary>
    /// <exception cref="StudyDamagedException">A file is not what was written; the place says which.</exception>
    public SessionRecord ReadRecord(SessionKey key)
    {
        var folders = SessionFolders.Look(_paths);
        return folders.Current(key) is { } entry
            ? SealedSession.ReadRecord(_paths, folders.Manifest, entry).Record
            : SessionFolders.Read(_paths, key).Record;
    }

    /// <summary>Reads a session of the kind <c>reports</c>, or the latest correction of it; its files are checked against the manifest.</summary>
    /// <exception cref="StudyDamagedException">A file is not what was written; the place says which.</exception>
    public ReportSession ReadReports(SessionKey key)
    {
        var folders = SessionFolders.Look(_paths);
        return folders.KindOf(key) == SessionDocument.ReportsKind && folders.Current(key) is { } entry
            ? SealedReports.Read(_paths, folders.Manifest, entry)
            : throw new StudyException($"The study has no session {key} of reports.", _paths.Relative(_paths.Session(key)), "Name one of its sessions.");
    }

    /// <summary>The record of a sealed session as it stands on the disk, <c>session.json</c>; checked against the manifest.</summary>
    /// <exception cref="StudyDamagedException">It is not what was written.</exception>
    public byte[] ReadRecordFile(SessionKey key)
    {
        var folders = SessionFolders.Look(_paths);
        return folders.Current(key) is { } entry
            ? SealedSession.ReadVerified(_paths, folders.Manifest, _paths.SessionFile(entry))
            : throw new StudyException($"The study has no sealed session {key}.", _paths.Relative(_paths.Session(key)), "Name one of its sessions.");
    }

    /// <summary>Reads a session of the kind <c>stick</c>, or the latest correction of it; its files are checked against the manifest.</summary>
    /// <exception cref="StudyDamagedException">A file is not what was written; the place says which.</exception>
    public StickSession ReadStick(SessionKey key)
    {
        var folders = SessionFolders.Look(_paths);
        return key.Procedure is not null && folders.Current(key) is { } entry
            ? SealedStick.Read(_paths, folders.Manifest, entry)
            : throw new StudyException(
                $"The study has no session {key} of a stick.",
                _paths.Relative(_paths.Session(key)),
                "Name one of its sessions as sitting.condition.procedure.");
    }

    /// <summary>Stores a calibration of the rig beside the earlier ones, which stay.</summary>
    /// <returns>Its name, for the sessions that follow.</returns>
    /// <exception cref="StudyException">The disk failed, or the manifest is damaged; nothing was stored.</exception>
    public string AddCalibration(StudyLock held, RigCalibration calibration)
    {
        Require(held);
        ArgumentNullException.ThrowIfNull(calibration);
        return CalibrationFile.Add(_paths, calibration);
    }

    /// <summary>Begins a live session: from now on it has a journal.</summary>
    /// <param name="held">The lock.</param>
    /// <param name="initial">What is known of it at the start, with its first segment.</param>
    /// <exception cref="StudyException">The session is there already, or its condition is not declared.</exception>
    public SessionRecorder Begin(StudyLock held, SessionRecord initial)
    {
        Require(held);
        ArgumentNullException.ThrowIfNull(initial);
        return Recording.Begin(_paths, File, initial);
    }

    /// <summary>Goes on with an open session where its journal ends; a torn last line is cut and noted as an event.</summary>
    /// <exception cref="StudyException">The session is sealed or not there.</exception>
    /// <exception cref="StudyDamagedException">The journal is damaged before its last line.</exception>
    public SessionRecorder Resume(StudyLock held, SessionKey key)
    {
        Require(held);
        return Recording.Resume(_paths, key);
    }

    /// <summary>What a live run that is not sealed was asked for; null where that was not kept or cannot be read.</summary>
    public OpenRun? OpenRunOf(SessionKey key) => OpenRunFile.Read(_paths, key);

    /// <summary>Keeps what a live run was asked for, on the disk, so that it can be gone on with whatever becomes of the program.</summary>
    /// <exception cref="StudyDiskException">The disk failed.</exception>
    public void KeepOpenRun(StudyLock held, SessionKey key, OpenRun run)
    {
        Require(held);
        ArgumentNullException.ThrowIfNull(run);
        OpenRunFile.Write(_paths, key, run);
    }

    /// <summary>Forgets it, as when the session is sealed or never began.</summary>
    public void ForgetOpenRun(StudyLock held, SessionKey key)
    {
        Require(held);
        OpenRunFile.Remove(_paths, key);
    }

    /// <summary>Seals the sessions of one import: all of them or, if anything goes wrong, none.</summary>
    /// <param name="held">The lock.</param>
    /// <param name="sessions">The sessions; their keys must be new to the study.</param>
    /// <param name="import">What became of the file; its sessions are filled in.</param>
    /// <param name="newConditions">Conditions to declare or change on the way.</param>
    /// <param name="exclusions">Trials of these sessions to set aside from the start.</param>
    /// <param name="replacing">
    /// Why these sessions correct sealed ones with the same keys, which stay on the disk and are read no more. Null: no session is replaced.
    /// </param>
    /// <exception cref="StudyException">A session is there already, or a condition is not declared. Nothing was imported.</exception>
    /// <exception cref="ArgumentException">A trial breaks a rule. Nothing was imported.</exception>
    public void SealImported(
        StudyLock held,
        IReadOnlyList<(SessionRecord Record, IReadOnlyList<Trial> Trials)> sessions,
        ImportRecord import,
        IReadOnlyList<ConditionEntry> newConditions,
        IReadOnlyList<Exclusion>? exclusions = null,
        string? replacing = null)
    {
        Require(held);
        ArgumentNullException.ThrowIfNull(sessions);
        ArgumentNullException.ThrowIfNull(import);
        ArgumentNullException.ThrowIfNull(newConditions);
        RequireReason(replacing);
        var placed = SessionImport.Check(_paths, sessions, import, replacing);
        Seal(placed, import, newConditions, exclusions ?? []);
    }

    /// <summary>Seals the sessions of reports of one import: all of them or, if anything goes wrong, none.</summary>
    /// <param name="held">The lock.</param>
    /// <param name="sessions">The sessions; their keys must be new to the study.</param>
    /// <param name="import">What became of the file; its sessions are filled in.</param>
    /// <param name="newConditions">Conditions to declare on the way.</param>
    /// <param name="replacing">Why these sessions correct sealed ones of the same kind and keys; null: no session is replaced.</param>
    /// <exception cref="StudyException">A session is there already, or a condition is not declared. Nothing was imported.</exception>
    /// <exception cref="ArgumentException">A record breaks a rule. Nothing was imported.</exception>
    public void SealImported(StudyLock held, IReadOnlyList<ReportSession> sessions, ImportRecord import, IReadOnlyList<ConditionEntry> newConditions, string? replacing = null)
    {
        Require(held);
        ArgumentNullException.ThrowIfNull(sessions);
        ArgumentNullException.ThrowIfNull(import);
        ArgumentNullException.ThrowIfNull(newConditions);
        RequireReason(replacing);
        Seal(SessionImport.Check(_paths, sessions, import, replacing), import, newConditions, []);
    }

    /// <summary>Seals the sessions of a stick of one import or recording: all of them or, if anything goes wrong, none.</summary>
    /// <param name="held">The lock.</param>
    /// <param name="sessions">The sessions; their keys must be new to the study. A key without a procedure takes that of its session.</param>
    /// <param name="import">What became of the file; its sessions are filled in.</param>
    /// <param name="newConditions">Conditions to declare on the way.</param>
    /// <param name="replacing">Why these sessions correct sealed ones of the same kind and keys; null: no session is replaced.</param>
    /// <exception cref="StudyException">A session is there already, or a condition is not declared. Nothing was imported.</exception>
    /// <exception cref="ArgumentException">A record breaks a rule. Nothing was imported.</exception>
    public void SealImported(StudyLock held, IReadOnlyList<StickSession> sessions, ImportRecord import, IReadOnlyList<ConditionEntry> newConditions, string? replacing = null)
    {
        Require(held);
        ArgumentNullException.ThrowIfNull(sessions);
        ArgumentNullException.ThrowIfNull(import);
        ArgumentNullException.ThrowIfNull(newConditions);
        RequireReason(replacing);
        Seal(SessionImport.Check(_paths, sessions, import, replacing), import, newConditions, []);
    }

    private void Seal(
        IReadOnlyList<ImportedSession> placed, ImportRecord import, IReadOnlyList<ConditionEntry> newConditions, IReadOnlyList<Exclusion> exclusions)
    {
        var before = _store.ReadText();
        var after = newConditions.Aggregate(before, StudyFileEditor.SetCondition);
        after = exclusions.Aggregate(after, StudyFileEditor.AddExclusion);
        var file = StudyFileReader.Read(StudyFileText.Parse(after));
        foreach (var session in placed)
        {
            Recording.RequireDeclared(file, session.Entry.Key);
        }

        SessionImport.Seal(_paths, placed, import, () => _store.Edit(_ => after), () => _store.Edit(_ => before));
        File = file;
    }

    private static void RequireReason(string? replacing)
    {
        if (replacing is not null)
        {
            ArgumentException.ThrowIfNullOrWhiteSpace(replacing);
        }
    }

    internal StudyPaths Paths => _paths;

    private void Require(StudyLock held)
    {
        ArgumentNullException.ThrowIfNull(held);
        held.RequireHeldFor(_paths);
    }
}
