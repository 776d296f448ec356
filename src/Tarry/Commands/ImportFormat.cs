using System.Text;

namespace Tarry.Commands;

/// <summary>The formats of files that an import takes, and how one is told from its beginning.</summary>
internal static class ImportFormat
{
    public const string LongForm = "csv";
    public const string Logic = "vcd";
    public const string Sound = "wav";
    public const string Video = "video";

    public static readonly string[] All = [LongForm, Logic, Sound, Video];

    /// <summary>What a file is by its first bytes, else by its name; long-form text where nothing else is seen.</summary>
    public static string Of(string path)
    {
        var beginning = Beginning(path);
        if (beginning.StartsWith("RIFF", StringComparison.Ordinal) || beginning.StartsWith("RF64", StringComparison.Ordinal) || beginning.StartsWith("BW64", StringComparison.Ordinal))
        {
            return Sound;
        }

        if (beginning.TrimStart().StartsWith('$') || path.EndsWith(".vcd", StringComparison.OrdinalIgnoreCase))
        {
            return Logic;
        }

        if (path.EndsWith(".wav", StringComparison.OrdinalIgnoreCase))
        {
            return Sound;
        }

        var header = beginning.Split('\n').FirstOrDefault(line => line.Length > 0 && line[0] != '#') ?? "";
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
