using System.Text.Json;
using Tarry.Studies.Disk;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Sealing;

/// <summary>The two files of a sealed session.</summary>
internal static class SealedSession
{
    /// <summary>Writes them, flushes them and the folder, reads them back and compares.</summary>
    /// <returns>Their hashes by path in the study, for the manifest.</returns>
    public static Dictionary<string, string> Write(StudyPaths paths, SessionEntry entry, SessionRecord record, Trial[] trials)
    {
        var table = TrialTable.Write(trials);
        var document = StudyJson.File(SessionDocument.Of(record, OutcomeCounts.Of(trials)));
        DurableFile.WriteWithoutFolder(paths.Trials(entry), table);
        DurableFile.Write(paths.SessionFile(entry), document);

        var tableBack = File.ReadAllBytes(paths.Trials(entry));
        var documentBack = File.ReadAllBytes(paths.SessionFile(entry));
        if (!documentBack.AsSpan().SequenceEqual(document) || !TrialTable.Read(tableBack).AsSpan().SequenceEqual(trials))
        {
            throw new StudyDamagedException(
                $"What was written for session {entry} does not read back the same.",
                paths.Relative(paths.Session(entry)),
                "Check the disk; the journal is kept, so seal again on a sound disk.");
        }

        return new Dictionary<string, string>
        {
            [paths.Relative(paths.SessionFile(entry))] = Manifest.Sha256(documentBack),
            [paths.Relative(paths.Trials(entry))] = Manifest.Sha256(tableBack),
        };
    }

    /// <summary>Reads a sealed session; each file is checked against the manifest where that lists it.</summary>
    public static SessionData Read(StudyPaths paths, Manifest manifest, SessionEntry entry)
    {
        var (record, _) = ReadRecord(paths, manifest, entry);
        return new SessionData(record, ReadTrials(paths, manifest, entry), Sealed: true);
    }

    /// <summary>Reads <c>session.json</c> alone.</summary>
    public static (SessionRecord Record, SessionDocument Document) ReadRecord(
        StudyPaths paths, Manifest manifest, SessionEntry entry, string kind = SessionDocument.LatencyKind)
    {
        var path = paths.SessionFile(entry);
        var place = paths.Relative(path);
        try
        {
            var document = SessionDocument.Read(ReadVerified(paths, manifest, path), place, kind);
            var record = document.ToRecord();
            if (record.Key != entry.Key)
            {
                throw Damaged(place, $"it says that it is of session {record.Key}");
            }

            return (record.Replaces is not null) == (entry.Revision > 1)
                ? (record, document)
                : throw Damaged(place, "its name and what it says that it replaces do not agree");
        }
        catch (Exception exception) when (exception is JsonException or ArgumentException)
        {
            throw Damaged(place, exception.Message, exception);
        }
    }

    /// <summary>Reads <c>trials.parquet</c> alone.</summary>
    public static Trial[] ReadTrials(StudyPaths paths, Manifest manifest, SessionEntry entry)
    {
        var path = paths.Trials(entry);
        try
        {
            return TrialTable.Read(ReadVerified(paths, manifest, path));
        }
        catch (InvalidDataException exception)
        {
            throw Damaged(paths.Relative(path), exception.Message, exception);
        }
    }

    /// <summary>The bytes of a file, checked against the manifest where that lists it.</summary>
    public static byte[] ReadVerified(StudyPaths paths, Manifest manifest, string path)
    {
        var place = paths.Relative(path);
        byte[] content;
        try
        {
            content = File.ReadAllBytes(path);
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            throw Damaged(place, "it is missing", exception);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, place);
        }

        return manifest.HashOf(place) is { } expected && expected != Manifest.Sha256(content)
            ? throw Damaged(place, $"its SHA-256 is not the one in {Manifest.FileName}")
            : content;
    }

    internal static StudyDamagedException Damaged(string place, string what, Exception? inner = null) =>
        new($"{place} is damaged: {what}.", place, "Bring the session back from a copy of the study, or set it aside by moving its folder out.", inner);
}
