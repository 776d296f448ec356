using System.Text.Json;
using Tarry.Studies.Disk;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Sealing;

/// <summary>Reads the outlines of a study's sessions.</summary>
internal static class SessionOutlines
{
    public static IReadOnlyList<SessionOutline> Read(StudyPaths paths)
    {
        var folders = SessionFolders.Look(paths);
        return [.. folders.Keys.Select(key => folders.Current(key) is { } entry ? Sealed(paths, entry) : Open(paths, key))];
    }

    private static SessionOutline Sealed(StudyPaths paths, SessionEntry entry)
    {
        var file = new FileInfo(paths.SessionFile(entry));
        try
        {
            var counts = StudyJson.Read<Counts>(File.ReadAllBytes(file.FullName));
            return new SessionOutline(entry.Key, true, counts.Trials?.Captured, counts.Reports, file.LastWriteTimeUtc);
        }
        catch (Exception exception) when (DiskFault.Is(exception) || exception is JsonException)
        {
            // Whoever opens the session is told what is wrong with it.
            return new SessionOutline(entry.Key, true, null, null, file.Exists ? file.LastWriteTimeUtc : DateTimeOffset.UnixEpoch);
        }
    }

    private static SessionOutline Open(StudyPaths paths, SessionKey key)
    {
        var file = new FileInfo(paths.Journal(key));
        return new SessionOutline(key, false, null, null, file.Exists ? file.LastWriteTimeUtc : DateTimeOffset.UnixEpoch);
    }

    private sealed record Counts
    {
        [System.Text.Json.Serialization.JsonPropertyName("counts")]
        public OutcomeCounts? Trials { get; init; }

        public long? Reports { get; init; }
    }
}
