using System.Text;

namespace Tarry.Imports.DelimitedText;

/// <summary>A text file opened for reading, after a look at its beginning.</summary>
internal sealed class OpenedFile : IDisposable
{
    private const int PreviewBytes = 65_536;
    private readonly byte[] preview;

    private OpenedFile(FileStream stream, byte[] preview) => (Content, this.preview) = (new HashedFile(stream), preview);

    /// <summary>Its bytes.</summary>
    public HashedFile Content { get; }

    /// <summary>Opens a file.</summary>
    /// <exception cref="ImportException">It is not there, not to be read, empty, or in UTF-16.</exception>
    public static OpenedFile Open(string path)
    {
        var place = Path.GetFileName(path);
        FileStream? stream = null;
        try
        {
            // Before it is opened: opening a pipe that nobody writes to never returns.
            if (new FileInfo(path) is { Exists: true, Length: 0 })
            {
                throw new ImportException("The file is empty, or it is a pipe or a device.", place, "Give a file with a header and at least one row.");
            }

            stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1, FileOptions.SequentialScan);
            if (!stream.CanSeek)
            {
                throw new ImportException("This is a pipe or a device, not a file.", place, "Save its output to a file and import that.");
            }

            var preview = new byte[Math.Min(PreviewBytes, stream.Length)];
            stream.ReadExactly(preview);
            stream.Position = 0;
            RequireUtf8(preview, place);
            return new OpenedFile(stream, preview);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ImportException or ArgumentException)
        {
            stream?.Dispose();
            throw failure switch
            {
                ImportException known => known,
                FileNotFoundException or DirectoryNotFoundException => new ImportException("There is no such file.", path, "Check the path.", failure),
                _ when Directory.Exists(path) => new ImportException("This is a folder.", path, "Name the files in it.", failure),
                _ => new ImportException($"The file cannot be read: {failure.Message}", path, "Check that it is a file that you may read.", failure),
            };
        }
    }

    /// <summary>The one of comma, semicolon and tab that the header has most of outside quotation marks; the comma if it has none. A first line <c>sep=;</c> says it.</summary>
    public char InferDelimiter(char commentPrefix)
    {
        using var lines = new StringReader(Encoding.UTF8.GetString(preview).TrimStart('\uFEFF'));
        string? header;
        do
        {
            header = lines.ReadLine();
        }
        while (header is not null && (header.Length == 0 || header[0] == commentPrefix));

        if (header is ['s' or 'S', 'e' or 'E', 'p' or 'P', '=', var stated])
        {
            return stated;
        }

        var (commas, semicolons, tabs, quoted) = (0, 0, 0, false);
        foreach (var character in header ?? "")
        {
            quoted ^= character == '"';
            commas += !quoted && character == ',' ? 1 : 0;
            semicolons += !quoted && character == ';' ? 1 : 0;
            tabs += !quoted && character == '\t' ? 1 : 0;
        }

        return commas >= Math.Max(semicolons, tabs) ? ',' : semicolons >= tabs ? ';' : '\t';
    }

    /// <inheritdoc/>
    public void Dispose() => Content.Dispose();

    private static void RequireUtf8(ReadOnlySpan<byte> preview, string place)
    {
        if (preview.IsEmpty)
        {
            throw new ImportException("The file is empty.", place, "Give a file with a header and at least one row.");
        }

        if (preview.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || preview.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]) || EveryOtherByteIsZero(preview))
        {
            throw new ImportException("The text is in UTF-16.", place, "Save it as UTF-8 (in a spreadsheet program: 'CSV UTF-8') and import that.");
        }
    }

    /// <summary>UTF-16 without a byte order mark: Latin text has a zero in every pair.</summary>
    private static bool EveryOtherByteIsZero(ReadOnlySpan<byte> preview)
    {
        var (even, odd) = (0, 0);
        for (var at = 0; at + 1 < preview.Length; at += 2)
        {
            even += preview[at] == 0 ? 1 : 0;
            odd += preview[at + 1] == 0 ? 1 : 0;
        }

        var pairs = preview.Length / 2;
        return pairs > 8 && ((even > 0.9 * pairs && odd < 0.1 * pairs) || (odd > 0.9 * pairs && even < 0.1 * pairs));
    }
}
