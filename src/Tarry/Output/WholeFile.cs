using System.Text;

namespace Tarry.Output;

/// <summary>Writes a file whole or not at all.</summary>
internal static class WholeFile
{
    /// <summary>Writes to a temporary name beside it, then renames; returns the path.</summary>
    public static string Write(string path, Action<TextWriter> write)
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
            using (var writer = new StreamWriter(temporary, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)))
            {
                write(writer);
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
