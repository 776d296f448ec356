using Tarry.Studies.Disk;
using Tarry.Studies.Imports;
using Tarry.Studies.Sealing;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Checking;

/// <summary>Whether the files on the disk are those that the manifest lists.</summary>
internal static class ManifestCheck
{
    private const string BringBack = "Bring it back from a copy of the study.";

    public static List<StudyProblem> Run(StudyPaths paths, SessionFolders folders)
    {
        var manifest = folders.Manifest;
        var problems = new List<StudyProblem>();
        foreach (var (file, hash) in manifest.Files)
        {
            if (Look(paths, file, hash) is { } problem)
            {
                problems.Add(problem);
            }
        }

        problems.AddRange(Present(paths, folders)
            .Where(file => manifest.HashOf(file) is null)
            .Select(file => new StudyProblem(
                StudyProblemKind.FileNotListed,
                file,
                $"{file} is not in {Manifest.FileName}{(manifest.Exists ? "" : ", which is missing")}, so it cannot be verified.",
                manifest.Exists ? "Move it out of the study, or bring back the manifest that goes with it." : BringBack)));
        return problems;
    }

    private static StudyProblem? Look(StudyPaths paths, string file, string hash)
    {
        try
        {
            using var content = File.OpenRead(paths.Absolute(file));
            return Manifest.Sha256(content) == hash
                ? null
                : new StudyProblem(StudyProblemKind.FileChanged, file, $"{file} is not what was sealed: its SHA-256 differs.", BringBack);
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            return new StudyProblem(StudyProblemKind.FileMissing, file, $"{file} is missing.", BringBack);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            return new StudyProblem(StudyProblemKind.FileUnreadable, file, $"{file} cannot be read: {exception.Message}", "Check the disk and who may read it.");
        }
    }

    /// <summary>What is there and ought to be listed: everything in the session folders but open journals, the import records and the calibrations.</summary>
    private static IEnumerable<string> Present(StudyPaths paths, SessionFolders folders)
    {
        var unfinished = UnfinishedImport.Read(paths);
        var files = new[] { paths.Sessions, paths.Imports, paths.Calibrations }
            .Where(Directory.Exists)
            .SelectMany(folder => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
            .Where(path => path != paths.UnfinishedImport && Path.GetFileName(path) != StudyPaths.JournalFileName);
        foreach (var path in files)
        {
            var entry = SessionEntry.ParseOrNull(Path.GetFileName(Path.GetDirectoryName(path)!));
            // What an unfinished import or sealing has made so far does not count yet and is made anew or removed;
            // half-written files are never read.
            var passing = paths.Relative(path) == unfinished?.RecordPath
                || path.EndsWith(DurableFile.TemporarySuffix, StringComparison.Ordinal)
                || (entry is { } session && (unfinished?.Hides(paths, folders.Manifest, session) == true || folders.IsOpen(session)));
            if (!passing)
            {
                yield return paths.Relative(path);
            }
        }
    }
}
