
namespace Tarry.Imports.Recordings;

/// <summary>Opens the file of a recording, hashed as it is read.</summary>
internal static class RecordingFile
{
    /// <summary>Opens a file.</summary>
    /// <exception cref="ImportException">It is not there, not to be read, empty, or no file.</exception>
    public static HashedFile Open(string path)
    {
        try
        {
            // Before it is opened: opening a pipe that nobody writes to never returns.
            if (new FileInfo(path) is { Exists: true, Length: 0 })
            {
                throw new ImportException("The file is empty, or it is a pipe or a device.", Path.GetFileName(path), "Give a file with a recording in it.");
            }

            return new HashedFile(new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1, FileOptions.SequentialScan));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw failure switch
            {
                FileNotFoundException or DirectoryNotFoundException => new ImportException("There is no such file.", path, "Check the path.", failure),
                _ when Directory.Exists(path) => new ImportException("This is a folder.", path, "Name the files in it.", failure),
                _ => new ImportException($"The file cannot be read: {failure.Message}", path, "Check that it is a file that you may read.", failure),
            };
        }
    }

    /// <summary>Reads on to the end, so that the hash is of the whole file.</summary>
    public static void ReadToEnd(HashedFile file)
    {
        var rest = new byte[1 << 16];
        while (file.Read(rest) > 0)
        {
        }
    }
}
