namespace Tarry.Web.Shelf;

/// <summary>Tells whether a study has changed on the disk since it was last read, by whichever program.</summary>
/// <param name="ChangedAt">When its study file or its manifest was last written.</param>
/// <param name="Length">How long both are together.</param>
public readonly record struct StudyStamp(DateTimeOffset ChangedAt, long Length)
{
    private static readonly string[] Files = ["study.toml", "manifest.json"];

    /// <summary>The stamp of a study folder.</summary>
    /// <param name="folder">The study folder.</param>
    public static StudyStamp Of(string folder)
    {
        var files = Files
            .Select(name => new FileInfo(Path.Combine(folder, name)))
            .Where(file => file.Exists)
            .ToList();
        return new StudyStamp(
            files.Select(file => (DateTimeOffset)file.LastWriteTimeUtc).DefaultIfEmpty(DateTimeOffset.UnixEpoch).Max(),
            files.Sum(file => file.Length));
    }
}
