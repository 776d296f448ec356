using System.Text;

namespace Tarry.Output;

/// <summary>Writes a file whole or not at all.</summary>
internal static class WholeFile
{
    /// <summary>Writes text to a temporary name beside it, then renames; returns the path.</summary>
    public static string Write(string path, Action<TextWriter> write) => WriteBytes(path, stream =>
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true);
        write(writer);
    });

    /// <summary>Writes bytes to a temporary name beside it, then renames; returns the path.</summary>
    public static string WriteBytes(string path, Action<Stream> write)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        var temporary = path + ".tmp";
        try
        {
            using (var stream = new FileStream(temporary, FileMode.Create))
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
