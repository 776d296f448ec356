using System.Text.Json;
using Tarry.Studies.Disk;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Sealing;

/// <summary>The two files of a sealed session of the kind <c>reports</c>.</summary>
internal static class SealedReports
{
    /// <summary>Writes them, flushes them and the folder, reads them back and compares.</summary>
    /// <returns>Their hashes by path in the study, for the manifest.</returns>
    public static Dictionary<string, string> Write(StudyPaths paths, SessionEntry entry, ReportSession session)
    {
        var document = StudyJson.File(SessionDocument.Of(session));
        DurableFile.WriteWithoutFolder(paths.Reports(entry), output => ReportTable.Write(output, session.Stream, session.Reports));
        DurableFile.Write(paths.SessionFile(entry), document);

        var documentBack = File.ReadAllBytes(paths.SessionFile(entry));
        using var table = File.OpenRead(paths.Reports(entry));
        if (!documentBack.AsSpan().SequenceEqual(document) || !ReportTable.Holds(table, session.Stream, session.Reports))
        {
            throw new StudyDamagedException(
                $"What was written for session {entry} does not read back the same.",
                paths.Relative(paths.Session(entry)),
                "Check the disk, and import the file again on a sound one.");
        }

        return new Dictionary<string, string>
        {
            [paths.Relative(paths.SessionFile(entry))] = Manifest.Sha256(documentBack),
            [paths.Relative(paths.Reports(entry))] = Hash(table),
        };
    }

    /// <summary>Reads a sealed session; each file is checked against the manifest where that lists it.</summary>
    public static ReportSession Read(StudyPaths paths, Manifest manifest, SessionEntry entry)
    {
        var (record, _) = SealedSession.ReadRecord(paths, manifest, entry, SessionDocument.ReportsKind);
        return new ReportSession(record, WithTable(paths, manifest, entry, content => ReportTable.Read(content, record.ReportStream!)));
    }

    /// <summary>Reads it, and compares the columns of fields with the bytes of the reports.</summary>
    /// <returns>The session, the number of reports that <c>session.json</c> states, and the first place where a column says something else.</returns>
    public static (ReportSession Session, long? Stated, string? Disagreement) Check(StudyPaths paths, Manifest manifest, SessionEntry entry)
    {
        var (record, document) = SealedSession.ReadRecord(paths, manifest, entry, SessionDocument.ReportsKind);
        var (reports, disagreement) = WithTable(paths, manifest, entry, content => ReportTable.Check(content, record.ReportStream!));
        return (new ReportSession(record, reports), document.Reports, disagreement);
    }

    private static T WithTable<T>(StudyPaths paths, Manifest manifest, SessionEntry entry, Func<Stream, T> read)
    {
        var place = paths.Relative(paths.Reports(entry));
        try
        {
            using var content = File.OpenRead(paths.Reports(entry));
            if (manifest.HashOf(place) is { } expected && expected != Hash(content))
            {
                throw SealedSession.Damaged(place, $"its SHA-256 is not the one in {Manifest.FileName}");
            }

            content.Position = 0;
            return read(content);
        }
        catch (InvalidDataException exception)
        {
            throw SealedSession.Damaged(place, exception.Message, exception);
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            throw SealedSession.Damaged(place, "it is missing", exception);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, place);
        }
    }

    private static string Hash(FileStream content)
    {
        content.Position = 0;
        return Manifest.Sha256(content);
    }
}
