using System.Security.Cryptography;

namespace Tarry.Reports.DataPackage;

/// <summary>A file of a package as it lies on the disk.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="Sha256">The digest of its contents, lower-case hexadecimal.</param>
internal sealed record PackagedFile(string Name, long Bytes, string Sha256)
{
    /// <summary>Writes a file under a temporary name, renames it, and measures what is on the disk then.</summary>
    public static PackagedFile Write(string folder, string name, Action<Stream> write)
    {
        var path = Path.Combine(folder, name);
        var temporary = path + ".tmp";
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        try
        {
            using (var stream = new FileStream(temporary, FileMode.Create))
            {
                write(stream);
            }

            File.Move(temporary, path, overwrite: true);
        }
        finally
        {
            File.Delete(temporary);
        }

        using var read = File.OpenRead(path);
        return new PackagedFile(name, read.Length, Convert.ToHexStringLower(SHA256.HashData(read)));
    }
}
