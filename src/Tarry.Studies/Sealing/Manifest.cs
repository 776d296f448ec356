using System.Security.Cryptography;
using System.Text.Json;
using Tarry.Studies.Disk;

namespace Tarry.Studies.Sealing;

/// <summary>SHA-256 of every sealed file, by its path in the study.</summary>
internal sealed class Manifest
{
    public const string FileName = "manifest.json";

    private readonly SortedDictionary<string, string> _files;

    private Manifest(SortedDictionary<string, string> files) => _files = files;

    /// <summary>What it lists, in ordinal order.</summary>
    public IReadOnlyDictionary<string, string> Files => _files;

    /// <summary>Whether there is a manifest on the disk.</summary>
    public bool Exists { get; private init; }

    /// <summary>The manifest of a study; empty where there is none yet.</summary>
    public static Manifest Read(StudyPaths paths)
    {
        try
        {
            var document = StudyJson.Read<Document>(File.ReadAllBytes(paths.Manifest));
            FormatVersions.Require(document.FormatVersion, FileName);
            if (document.Files.Keys.FirstOrDefault(file => !StudyPaths.IsInside(file)) is { } outside)
            {
                throw new JsonException($"'{outside}' is not the path of a file in the study.");
            }

            return new Manifest(new SortedDictionary<string, string>(document.Files, StringComparer.Ordinal)) { Exists = true };
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            return new Manifest(new SortedDictionary<string, string>(StringComparer.Ordinal));
        }
        catch (JsonException exception)
        {
            throw new StudyDamagedException(
                $"{FileName} is damaged: {exception.Message}",
                FileName,
                "Bring it back from a copy. Without one, rename it; the sessions can then be read but not verified.",
                exception);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, FileName);
        }
    }

    public static string Sha256(ReadOnlySpan<byte> content) => Convert.ToHexStringLower(SHA256.HashData(content));

    /// <summary>The hash of a file from where it is, a piece at a time: a table of reports may be larger than the memory.</summary>
    public static string Sha256(Stream content) => Convert.ToHexStringLower(SHA256.HashData(content));

    /// <summary>The hash that a file must have; null if it is not listed.</summary>
    public string? HashOf(string relative) => _files.GetValueOrDefault(relative);

    /// <summary>Adds files and writes the manifest: from this moment they are sealed.</summary>
    public void Enter(StudyPaths paths, IEnumerable<KeyValuePair<string, string>> hashes)
    {
        foreach (var (file, hash) in hashes)
        {
            _files[file] = hash;
        }

        DurableFile.Write(paths.Manifest, StudyJson.File(new Document { FormatVersion = Study.FormatVersion, Files = _files }));
    }

    private sealed record Document
    {
        public required int FormatVersion { get; init; }

        public required SortedDictionary<string, string> Files { get; init; }
    }
}
