using Tarry.Studies.Disk;
using Tarry.Studies.Imports;
using Tarry.Studies.Journals;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Sealing;

/// <summary>The session folders of a study, sealed and open, as they stand at one moment.</summary>
internal sealed class SessionFolders
{
    private readonly StudyPaths _paths;
    private readonly UnfinishedImport? _unfinished;
    private readonly HashSet<SessionEntry> _onDisk;
    private readonly HashSet<SessionEntry> _listed;

    private SessionFolders(StudyPaths paths)
    {
        _paths = paths;
        Manifest = Manifest.Read(paths);
        _unfinished = UnfinishedImport.Read(paths);
        _onDisk = Directory.Exists(paths.Sessions)
            ? [.. Directory.EnumerateDirectories(paths.Sessions).Select(folder => SessionEntry.ParseOrNull(Path.GetFileName(folder))).OfType<SessionEntry>()]
            : [];
        _listed =
        [
            .. Manifest.Files.Keys
                .Where(file => file.EndsWith($"/{StudyPaths.SessionFileName}", StringComparison.Ordinal))
                .Select(file => SessionEntry.ParseOrNull(file.Split('/')[^2]))
                .OfType<SessionEntry>(),
        ];
    }

    /// <summary>The manifest at that moment.</summary>
    public Manifest Manifest { get; }

    /// <summary>The sessions that count, sorted. One that the manifest lists and whose folder is gone is among them: it is read as damaged, never left out.</summary>
    public IReadOnlyList<SessionKey> Keys =>
        [.. _onDisk.Where(entry => IsSealed(entry) || IsOpen(entry)).Concat(_listed).Select(entry => entry.Key).Distinct().Order()];

    /// <summary>The sessions that count of one kind.</summary>
    public IReadOnlyList<SessionKey> KeysOf(string kind) => [.. Keys.Where(key => KindOf(key) == kind)];

    /// <summary>The kind of a session: a procedure in its name tells a stick's, its files the others.</summary>
    public string KindOf(SessionKey key) => key.Procedure is not null ? SessionDocument.StickKind
        : HoldsReports(key) ? SessionDocument.ReportsKind
        : SessionDocument.LatencyKind;

    /// <summary>Whether a session holds reports: by its files in the manifest, else by those on the disk.</summary>
    private bool HoldsReports(SessionKey key) => Current(key) is { } entry
        && (_listed.Contains(entry) ? Manifest.HashOf(_paths.Relative(_paths.Reports(entry))) is not null : File.Exists(_paths.Reports(entry)));

    public static SessionFolders Look(StudyPaths paths)
    {
        try
        {
            return new SessionFolders(paths);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, paths.Relative(paths.Sessions));
        }
    }

    /// <summary>Sealed: the manifest lists it; or it has no journal, and no unfinished import is making it.</summary>
    public bool IsSealed(SessionEntry entry) =>
        _listed.Contains(entry)
        || (File.Exists(_paths.SessionFile(entry)) && !HasJournal(entry) && _unfinished?.Hides(_paths, Manifest, entry) != true);

    /// <summary>Open: its journal is what counts.</summary>
    public bool IsOpen(SessionEntry entry) => HasJournal(entry) && !_listed.Contains(entry);

    /// <summary>The sealed entry of a session that is read: the latest correction; null if none is sealed.</summary>
    public SessionEntry? Current(SessionKey key) =>
        _onDisk.Concat(_listed)
            .Where(entry => entry.Key == key && IsSealed(entry))
            .Select(entry => (SessionEntry?)entry)
            .MaxBy(entry => entry!.Value.Revision);

    /// <summary>Whether anything stands in the way of a new session with this key. A folder left empty by a program that was killed does not.</summary>
    public bool IsTaken(SessionKey key) =>
        _listed.Any(entry => entry.Key == key) || _onDisk.Any(entry => entry.Key == key && HoldsFiles(_paths.Session(entry)));

    /// <summary>Reads a session: its current sealed entry, or its open journal, recovered in memory.</summary>
    public static SessionData Read(StudyPaths paths, SessionKey key)
    {
        var folders = Look(paths);
        if (folders.Current(key) is null && folders.IsOpen(key))
        {
            try
            {
                return ReadOpen(paths, key);
            }
            catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
            {
                // Sealed by its program in this very moment.
                folders = Look(paths);
            }
        }

        return folders.Current(key) is { } entry
            ? SealedSession.Read(paths, folders.Manifest, entry)
            : throw new StudyException($"The study has no session {key}.", paths.Relative(paths.Session(key)), "Name one of its sessions.");
    }

    /// <summary>Removes journals whose sealing came as far as the manifest, once they are seen to hold nothing else.</summary>
    public void RemoveSealedJournals()
    {
        foreach (var entry in _listed.Where(entry => HasJournal(entry) && SealedJournal.Agrees(_paths, Manifest, entry.Key)))
        {
            File.Delete(_paths.Journal(entry.Key));
        }
    }

    private static bool HoldsFiles(string folder) =>
        Directory.EnumerateFileSystemEntries(folder).Any(path => !path.EndsWith(DurableFile.TemporarySuffix, StringComparison.Ordinal));

    private bool HasJournal(SessionEntry entry) => entry.Revision == 1 && File.Exists(_paths.Journal(entry.Key));

    private static SessionData ReadOpen(StudyPaths paths, SessionKey key)
    {
        try
        {
            var reading = JournalReader.Read(paths, key);
            if (reading.TornNotice is { } notice)
            {
                reading.State.AddEvent(notice);
            }

            return new SessionData(reading.State.Record, reading.State.TrialsInOrder(), Sealed: false);
        }
        catch (Exception exception) when (DiskFault.Is(exception) && exception is not (FileNotFoundException or DirectoryNotFoundException))
        {
            throw DiskFault.Describe(exception, paths.Relative(paths.Journal(key)));
        }
    }
}
