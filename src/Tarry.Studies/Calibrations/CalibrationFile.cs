using System.Globalization;
using System.Text.Json;
using Tarry.Studies.Disk;
using Tarry.Studies.Sealing;

namespace Tarry.Studies.Calibrations;

/// <summary>Calibrations of the rig on the disk: <c>calibrations/0001.json</c> and on. One counts from when the manifest lists it.</summary>
internal sealed record CalibrationFile
{
    private const string Prefix = "calibrations/";
    private const string Suffix = ".json";

    public required int FormatVersion { get; init; }

    public required RigCalibration Calibration { get; init; }

    /// <summary>All that count, by name, the oldest first.</summary>
    public static IReadOnlyList<(string Name, RigCalibration Calibration)> ReadAll(StudyPaths paths)
    {
        var manifest = Manifest.Read(paths);
        return [.. Names(manifest).Select(name => (name, Read(paths, manifest, Prefix + name + Suffix)))];
    }

    /// <summary>Seals a new one; what an earlier program began under its name and did not seal is overwritten.</summary>
    /// <returns>Its name.</returns>
    public static string Add(StudyPaths paths, RigCalibration calibration)
    {
        try
        {
            var manifest = Manifest.Read(paths);
            var newest = Names(manifest).LastOrDefault("0");
            var name = (int.Parse(newest, CultureInfo.InvariantCulture) + 1).ToString("0000", CultureInfo.InvariantCulture);
            var content = StudyJson.File(new CalibrationFile { FormatVersion = Study.FormatVersion, Calibration = calibration });
            DurableFile.MakeFolder(paths.Calibrations);
            DurableFile.Write(paths.Absolute(Prefix + name + Suffix), content);
            manifest.Enter(paths, [new(Prefix + name + Suffix, Manifest.Sha256(content))]);
            return name;
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, paths.Relative(paths.Calibrations), "No calibration was stored.");
        }
    }

    private static IEnumerable<string> Names(Manifest manifest) =>
        manifest.Files.Keys
            .Where(file => file.StartsWith(Prefix, StringComparison.Ordinal) && file.EndsWith(Suffix, StringComparison.Ordinal))
            .Select(file => file[Prefix.Length..^Suffix.Length])
            .Where(name => name.Length >= 4 && name.All(char.IsAsciiDigit))
            .OrderBy(name => name.Length)
            .ThenBy(name => name, StringComparer.Ordinal);

    private static RigCalibration Read(StudyPaths paths, Manifest manifest, string place)
    {
        try
        {
            var content = File.ReadAllBytes(paths.Absolute(place));
            if (manifest.HashOf(place) != Manifest.Sha256(content))
            {
                throw Damaged(place, $"its SHA-256 is not the one in {Manifest.FileName}");
            }

            var file = StudyJson.Read<CalibrationFile>(content);
            FormatVersions.Require(file.FormatVersion, place);
            return file.Calibration;
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            throw Damaged(place, "it is missing");
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

    private static StudyDamagedException Damaged(string place, string what) =>
        new($"{place} is damaged: {what}.", place, "Bring it back from a copy of the study.");
}
