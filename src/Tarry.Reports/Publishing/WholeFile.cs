using System.Text;

namespace Tarry.Reports.Publishing;

/// <summary>Writes a file whole or not at all.</summary>
public static class WholeFile
{
    private static readonly UTF8Encoding PlainUtf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes text to a temporary name beside it, then renames; returns the path.</summary>
    /// <exception cref="NotAFolderException">Where its folder should be is a file.</exception>
    public static string Write(string path, Action<TextWriter> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        return WriteBytes(path, stream =>
        {
            using var writer = new StreamWriter(stream, PlainUtf8, leaveOpen: true);
            write(writer);
        });
    }

    /// <summary>Writes bytes to a temporary name beside it, then renames; returns the path.</summary>
    /// <exception cref="NotAFolderException">Where its folder should be is a file.</exception>
    public static string WriteBytes(string path, Action<Stream> write)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(write);
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        if (File.Exists(folder))
        {
            throw new NotAFolderException(folder);
        }

        Directory.CreateDirectory(folder);
        var temporary = path + ".tmp";
        try
        {
            using (var stream = File.Create(temporary))
            {
                write(stream);
            }

            File.Move(temporary, path, overwrite: true);
            return path;
        }
        finally
        {
            File.Delete(temporary);
        }
    }
}
