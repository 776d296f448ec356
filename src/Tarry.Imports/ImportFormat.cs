using System.Text;
using Tarry.Imports.PacketCapture;

namespace Tarry.Imports;

/// <summary>The formats of files that an import takes, and how one is told from its beginning.</summary>
public static class ImportFormat
{
    /// <summary>Long-form delimited text.</summary>
    public const string LongForm = "csv";

    /// <summary>A value change dump of a logic analyser.</summary>
    public const string Logic = "vcd";

    /// <summary>A sound recording.</summary>
    public const string Sound = "wav";

    /// <summary>A table with the brightness of a video's frames.</summary>
    public const string Video = "video";

    /// <summary>Packet captures, by the names of their file formats.</summary>
    public static IReadOnlyList<string> Captures { get; } = ["pcap", "pcapng", "btsnoop"];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } = [LongForm, Logic, Sound, Video, .. Captures];

    // RFC 1952, RFC 8878, and the specifications of the others (from memory).
    private static readonly (string Magic, string Name)[] Compressions =
        [("\x1f\u008b", "gzip"), ("PK\x03\x04", "zip"), ("BZh", "bzip2"), ("\u00fd7zXZ", "xz"), ("\x28\u00b5\u002f\u00fd", "zstd"), ("7z\u00bc\u00af", "7z")];

    /// <summary>Refuses what no reader takes in: a file that is not there, a folder, a compressed file.</summary>
    /// <exception cref="ImportException">It is one of these.</exception>
    public static void RequireReadable(string path)
    {
        if (Directory.Exists(path))
        {
            throw new ImportException("This is a folder.", path, "Name the files in it.");
        }

        if (!File.Exists(path))
        {
            throw new ImportException("There is no such file.", path, "Check the path.");
        }

        var beginning = Beginning(path);
        var packed = Compressions.FirstOrDefault(known => beginning.StartsWith(known.Magic, StringComparison.Ordinal)).Name;
        if (packed is not null)
        {
            throw new ImportException($"The file is compressed ({packed}).", Path.GetFileName(path), "Unpack it, and import what is in it.");
        }
    }

    /// <summary>What a recording is by its first bytes, sound or logic; null for anything else.</summary>
    private static string? ByContent(string path)
    {
        var beginning = Beginning(path);
        return beginning.StartsWith("RIFF", StringComparison.Ordinal) || beginning.StartsWith("RF64", StringComparison.Ordinal) || beginning.StartsWith("BW64", StringComparison.Ordinal) ? Sound
            : beginning.TrimStart().StartsWith('$') ? Logic
            : null;
    }

    /// <summary>The format of a packet capture by its first bytes, else by its name where these are not of another recording; null for anything else.</summary>
    public static string? OfCapture(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return CaptureFile.FormatOf(path) is { } format
            ? format.ToString().ToLowerInvariant()
            : ByContent(path) is not null ? null
            : Captures.FirstOrDefault(name => path.EndsWith($".{name}", StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>What a file is by its first bytes, else by its name; long-form text where nothing else is seen.</summary>
    public static string Of(string path)
    {
        if (OfCapture(path) is { } capture)
        {
            return capture;
        }

        if (ByContent(path) is { } recording)
        {
            return recording;
        }

        if (path.EndsWith(".vcd", StringComparison.OrdinalIgnoreCase))
        {
            return Logic;
        }

        if (path.EndsWith(".wav", StringComparison.OrdinalIgnoreCase))
        {
            return Sound;
        }

        var header = Beginning(path).Split('\n').FirstOrDefault(line => line.Length > 0 && line[0] != '#') ?? "";
        return header.Contains("pts_time", StringComparison.OrdinalIgnoreCase) ? Video : LongForm;
    }

    private static string Beginning(string path)
    {
        try
        {
            if (!File.Exists(path) || new FileInfo(path).Length == 0)
            {
                return "";
            }

            using var file = File.OpenRead(path);
            var bytes = new byte[4_096];
            return Encoding.Latin1.GetString(bytes, 0, file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false));
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            // Whoever reads it says what is wrong with it.
            return "";
        }
    }
}
