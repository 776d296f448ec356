using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Tarry.Studies.Disk;
using Tarry.Studies.Sealing;

namespace Tarry.Studies.Imports;

/// <summary>Import records on the disk.</summary>
internal sealed partial record ImportRecordFile
{
    public required int FormatVersion { get; init; }

    public required ImportRecord Import { get; init; }

    /// <summary>The first free path for a record of a file with this hash.</summary>
    public static string FreePath(StudyPaths paths, string sha256)
    {
        var stem = sha256[..16];
        var path = Path.Combine(paths.Imports, $"{stem}.json");
        for (var number = 2; File.Exists(path); number++)
        {
            path = Path.Combine(paths.Imports, string.Create(CultureInfo.InvariantCulture, $"{stem}-{number}.json"));
        }

        return path;
    }

    public static byte[] Encode(ImportRecord import) =>
        StudyJson.File(new ImportRecordFile { FormatVersion = Study.FormatVersion, Import = import });

    /// <summary>All records that count, in order of their file names.</summary>
    public static IReadOnlyList<ImportRecord> ReadAll(StudyPaths paths)
    {
        if (!Directory.Exists(paths.Imports))
        {
            return [];
        }

        var manifest = Manifest.Read(paths);
        var unfinished = UnfinishedImport.Read(paths)?.RecordPath;
        return
        [
            .. Directory.EnumerateFiles(paths.Imports, "*.json")
                .Where(path => RecordName().IsMatch(Path.GetFileName(path)))
                .Where(path => paths.Relative(path) != unfinished || manifest.HashOf(paths.Relative(path)) is not null)
                // Shorter first, so that the first record of a file comes before its -2, and -9 before -10.
                .OrderBy(path => Path.GetFileName(path)[..16], StringComparer.Ordinal)
                .ThenBy(path => path.Length)
                .ThenBy(path => path, StringComparer.Ordinal)
                .Select(path => Read(paths, manifest, path)),
        ];
    }

    public static ImportRecord Read(StudyPaths paths, Manifest manifest, string path)
    {
        var place = paths.Relative(path);
        try
        {
            var content = File.ReadAllBytes(path);
            if (manifest.HashOf(place) is { } expected && expected != Manifest.Sha256(content))
            {
                throw Damaged(place, $"its SHA-256 is not the one in {Manifest.FileName}");
            }

            var file = StudyJson.Read<ImportRecordFile>(content);
            FormatVersions.Require(file.FormatVersion, place);
            return file.Import;
        }
        catch (JsonException exception)
        {
            throw Damaged(place, exception.Message);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, place);
        }
    }

    [GeneratedRegex(@"\A[0-9a-f]{16}(-[0-9]+)?\.json\z")]
    private static partial Regex RecordName();

    private static StudyDamagedException Damaged(string place, string what) =>
        new($"{place} is damaged: {what}.", place, "Bring it back from a copy of the study.");
}
