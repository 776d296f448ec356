using Tarry.Studies.StudyFiles;

namespace Tarry.Studies.Disk;

/// <summary>Making and finding study folders.</summary>
internal static class StudyFolders
{
    /// <summary>Makes a folder with a study file in it, or nothing.</summary>
    public static void Create(StudyPaths paths, string studyFile)
    {
        StudyFileReader.Read(StudyFileText.Parse(studyFile));
        if (File.Exists(paths.Folder))
        {
            throw new StudyException($"{paths.Folder} is a file.", paths.Folder, "Choose another folder.");
        }

        if (File.Exists(paths.StudyFile))
        {
            throw new StudyException($"There is a study in {paths.Folder} already.", paths.Folder, "Use it, or choose another folder.");
        }

        if (Directory.Exists(paths.Folder) && Directory.EnumerateFileSystemEntries(paths.Folder).Any())
        {
            throw new StudyException($"The folder {paths.Folder} is not empty.", paths.Folder, "Choose an empty folder or a new one.");
        }

        var made = FirstMissing(paths.Folder);
        try
        {
            Directory.CreateDirectory(paths.Folder);
            new StudyFileStore(paths.StudyFile).Write(studyFile);
        }
        catch (Exception exception) when (DiskFault.Is(exception) || exception is StudyDiskException)
        {
            RemoveMade(paths, made);
            throw exception is StudyDiskException ? exception : DiskFault.Describe(exception, paths.Folder, "Nothing was made.");
        }
    }

    /// <summary>Refuses a folder that is not there or has no study file.</summary>
    public static void RequireStudy(StudyPaths paths)
    {
        if (!Directory.Exists(paths.Folder))
        {
            throw new StudyException(
                File.Exists(paths.Folder) ? $"{paths.Folder} is a file; a study is a folder." : $"There is no folder {paths.Folder}.",
                paths.Folder,
                "Check the path, or make a study there with: tarry new");
        }

        if (!File.Exists(paths.StudyFile))
        {
            throw new StudyException(
                $"The folder {paths.Folder} holds no study: it has no {StudyFileText.FileName}.",
                paths.Folder,
                "Check the path, or make a study there with: tarry new");
        }
    }

    private static string? FirstMissing(string folder)
    {
        string? missing = null;
        for (var path = folder; path is not null && !Directory.Exists(path); path = Path.GetDirectoryName(path))
        {
            missing = path;
        }

        return missing;
    }

    private static void RemoveMade(StudyPaths paths, string? made)
    {
        try
        {
            File.Delete(paths.StudyFile);
            if (made is not null && Directory.Exists(made))
            {
                Directory.Delete(made, recursive: true);
            }
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            // The error that led here is the one that the user needs to see.
        }
    }
}
