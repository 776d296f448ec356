using System.Text.Json;
using System.Text.RegularExpressions;
using Tarry.Studies.Disk;
using Tarry.Studies.Sealing;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Imports;

/// <summary>The note that an import is under way: what it will make, so that it can be undone if it does not come to its end.</summary>
internal sealed partial record UnfinishedImport
{
    public required int FormatVersion { get; init; }

    /// <summary>The sessions, as <c>sitting.condition</c>.</summary>
    public required IReadOnlyList<string> Sessions { get; init; }

    /// <summary>The import record by its path in the study.</summary>
    public required string RecordPath { get; init; }

    public static UnfinishedImport? Read(StudyPaths paths)
    {
        var place = paths.Relative(paths.UnfinishedImport);
        try
        {
            if (!File.Exists(paths.UnfinishedImport))
            {
                return null;
            }

            var note = StudyJson.Read<UnfinishedImport>(File.ReadAllBytes(paths.UnfinishedImport));
            FormatVersions.Require(note.FormatVersion, place);
            // Settling deletes what the note names, so it may name nothing but sessions and an import record.
            return note.Sessions.All(session => session is not null && SessionFolders.ParseOrNull(session) is not null)
                && RecordForm().IsMatch(note.RecordPath)
                    ? note
                    : throw new JsonException("It names what no import makes.");
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
        catch (JsonException exception)
        {
            throw new StudyDamagedException($"{place} is damaged: {exception.Message}", place, "Bring it back from a copy of the study.", exception);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, place);
        }
    }

    /// <summary>Notes it on the disk, before anything else is made.</summary>
    public void Write(StudyPaths paths)
    {
        DurableFile.MakeFolder(paths.Imports);
        DurableFile.Write(paths.UnfinishedImport, StudyJson.File(this));
    }

    /// <summary>Whether a session is of this import and does not count yet.</summary>
    public bool Hides(StudyPaths paths, Manifest manifest, SessionKey key) =>
        Sessions.Contains(key.ToString()) && manifest.HashOf(paths.Relative(paths.SessionFile(key))) is null;

    /// <summary>Removes what the import made, unless it came as far as the manifest; then the note.</summary>
    public void Settle(StudyPaths paths)
    {
        var manifest = Manifest.Read(paths);
        foreach (var key in Sessions.Select(SessionKey.Parse).Where(key => Hides(paths, manifest, key)))
        {
            if (Directory.Exists(paths.Session(key)))
            {
                Directory.Delete(paths.Session(key), recursive: true);
            }
        }

        if (manifest.HashOf(RecordPath) is null)
        {
            File.Delete(paths.Absolute(RecordPath));
        }

        File.Delete(paths.UnfinishedImport);
        FolderFlush.Flush(paths.Imports);
    }

    [GeneratedRegex(@"\Aimports/[0-9a-f]{16}(-[0-9]+)?\.json\z")]
    private static partial Regex RecordForm();
}
