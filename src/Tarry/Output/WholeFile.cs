using System.Text;

namespace Tarry.Output;

/// <summary>Writes a file whole or not at all.</summary>
internal static class WholeFile
{
    private static readonly UTF8Encoding PlainUtf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes text to a temporary name beside it, then renames; returns the path.</summary>
    public static string Write(string path, Action<TextWriter> write) => WriteBytes(path, stream =>
    {
        using var writer = new StreamWriter(stream, PlainUtf8, leaveOpen: true);
        write(writer);
    });

    /// <summary>Writes bytes to a temporary name beside it, then renames; returns the path.</summary>
    public static string WriteBytes(string path, Action<Stream> write)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        if (File.Exists(folder))
        {
            throw new UsageException($"{folder} is a file; a folder is needed to write to.", "Give another folder with --out.");
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
