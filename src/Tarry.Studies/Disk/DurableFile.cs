namespace Tarry.Studies.Disk;

/// <summary>Files that are on the disk, whole, when a method returns, or not there at all.</summary>
internal static class DurableFile
{
    /// <summary>What the name of a half-written file ends in.</summary>
    public const string TemporarySuffix = ".tmp";

    /// <summary>Writes or replaces a file: temporary name, flush, rename, flush of the folder.</summary>
    public static void Write(string path, ReadOnlySpan<byte> content)
    {
        WriteWithoutFolder(path, content);
        FolderFlush.Flush(Path.GetDirectoryName(path)!);
    }

    /// <summary>The same without the flush of the folder, for several files in a row.</summary>
    public static void WriteWithoutFolder(string path, ReadOnlySpan<byte> content)
    {
        var whole = content.ToArray();
        WriteWithoutFolder(path, stream => stream.Write(whole));
    }

    /// <summary>The same for a file too large to be held.</summary>
    public static void WriteWithoutFolder(string path, Action<Stream> write)
    {
        var temporary = path + TemporarySuffix;
        try
        {
            using (var stream = new FileStream(temporary, FileMode.Create, FileAccess.Write, FileShare.Read, 0))
            {
                write(stream);
                stream.Flush(flushToDisk: true);
            }

            File.Move(temporary, path, overwrite: true);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            Remove(temporary);
            throw;
        }
    }

    /// <summary>Removes a file that is not wanted; on a disk that refuses, it stays and is not read.</summary>
    public static void Remove(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            // The error that led here is the one that the user needs to see.
        }
    }

    /// <summary>Makes a folder and flushes the one that it is in.</summary>
    public static void MakeFolder(string path)
    {
        if (!Directory.Exists(path))
        {
            Directory.CreateDirectory(path);
            FolderFlush.Flush(Path.GetDirectoryName(path)!);
        }
    }
}
