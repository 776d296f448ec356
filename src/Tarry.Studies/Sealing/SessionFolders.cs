using Tarry.Studies.Disk;
using Tarry.Studies.Imports;
using Tarry.Studies.Journals;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Sealing;

/// <summary>The session folders of a study, sealed and open.</summary>
internal static class SessionFolders
{
    /// <summary>The sessions that count, sorted.</summary>
    public static IReadOnlyList<SessionKey> Keys(StudyPaths paths)
    {
        try
        {
            var manifest = Manifest.Read(paths);
            var unfinished = UnfinishedImport.Read(paths);
            return
            [
                .. Names(paths)
                    .Select(ParseOrNull)
                    .OfType<SessionKey>()
                    .Where(key => File.Exists(paths.Journal(key)) || File.Exists(paths.SessionFile(key)) || IsListed(paths, manifest, key))
                    .Where(key => unfinished?.Hides(paths, manifest, key) != true)
                    .Union(Listed(manifest))
                    .Order(),
            ];
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, paths.Relative(paths.Sessions));
        }
    }

    /// <summary>The names of what is in <c>sessions/</c>.</summary>
    public static IEnumerable<string> Names(StudyPaths paths) =>
        Directory.Exists(paths.Sessions) ? Directory.EnumerateDirectories(paths.Sessions).Select(folder => Path.GetFileName(folder)) : [];

    public static SessionKey? ParseOrNull(string name)
    {
        var parts = name.Split('.');
        return parts.Length == 2 && Sessions.Names.IsName(parts[0]) && Sessions.Names.IsName(parts[1]) ? new SessionKey(parts[0], parts[1]) : null;
    }

    /// <summary>Sealed: no journal, or the manifest lists it.</summary>
    public static bool IsSealed(StudyPaths paths, Manifest manifest, SessionKey key) =>
        IsListed(paths, manifest, key) || (!File.Exists(paths.Journal(key)) && File.Exists(paths.SessionFile(key)));

    public static SessionData Read(StudyPaths paths, SessionKey key)
    {
        var manifest = Manifest.Read(paths);
        if (!IsSealed(paths, manifest, key) && File.Exists(paths.Journal(key)))
        {
            try
            {
                return ReadOpen(paths, key);
            }
            catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
            {
                // Sealed by its program in this very moment.
                manifest = Manifest.Read(paths);
            }
        }

        if (!IsSealed(paths, manifest, key) || UnfinishedImport.Read(paths)?.Hides(paths, manifest, key) == true)
        {
            throw new StudyException($"The study has no session {key}.", paths.Relative(paths.Session(key)), "Name one of its sessions.");
        }

        return SealedSession.Read(paths, manifest, key);
    }

    /// <summary>Removes journals whose sealing came as far as the manifest.</summary>
    public static void RemoveSealedJournals(StudyPaths paths)
    {
        var manifest = Manifest.Read(paths);
        foreach (var key in Names(paths).Select(ParseOrNull).OfType<SessionKey>())
        {
            if (File.Exists(paths.Journal(key)) && IsListed(paths, manifest, key))
            {
                // Not before the sealed files have proved sound.
                SealedSession.Read(paths, manifest, key);
                File.Delete(paths.Journal(key));
            }
        }
    }

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

    private static bool IsListed(StudyPaths paths, Manifest manifest, SessionKey key) =>
        manifest.HashOf(paths.Relative(paths.SessionFile(key))) is not null;

    /// <summary>Sessions that the manifest lists, also those whose folder is gone: they are read as damaged, never left out.</summary>
    private static IEnumerable<SessionKey> Listed(Manifest manifest) =>
        manifest.Files.Keys
            .Where(file => file.EndsWith($"/{StudyPaths.SessionFileName}", StringComparison.Ordinal))
            .Select(file => ParseOrNull(file.Split('/')[1]))
            .OfType<SessionKey>();
}
