using Tarry.Web.Hosting;

namespace Tarry.Web.Shelf;

/// <summary>The studies below one folder.</summary>
/// <param name="options">Names the folder.</param>
public sealed class StudyShelf(ServeOptions options)
{
    private const string StudyFileName = "study.toml";
    private const int DeepestLevel = 3;

    /// <summary>The folder, absolute.</summary>
    public string Folder { get; } = Path.TrimEndingDirectorySeparator(Path.GetFullPath(options.Folder));

    /// <summary>The names of the studies, in no order: each one's place below the folder, with <c>/</c>.</summary>
    public IEnumerable<string> Names() => StudyFolders(Folder, 0).Select(folder => Path.GetRelativePath(Folder, folder).Replace('\\', '/'));

    /// <summary>The folder of a study by its name on the shelf; null where the shelf has none of that name.</summary>
    /// <param name="name">As <see cref="Names"/> has it; anything else, such as a way out of the folder, names nothing.</param>
    public string? FolderOf(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var parts = name.Split('/');
        if (parts.Length > DeepestLevel || parts.Any(part => part.Length == 0 || part.StartsWith('.') || part.AsSpan().IndexOfAny("\\:\0") >= 0))
        {
            return null;
        }

        var folder = Path.Combine([Folder, .. parts]);
        return File.Exists(Path.Combine(folder, StudyFileName)) ? folder : null;
    }

    private static IEnumerable<string> StudyFolders(string folder, int level)
    {
        var inside = Directory.Exists(folder) && level < DeepestLevel
            ? Directory.EnumerateDirectories(folder, "*", new EnumerationOptions { AttributesToSkip = FileAttributes.Hidden | FileAttributes.ReparsePoint })
            : [];
        foreach (var candidate in inside.Where(candidate => !Path.GetFileName(candidate).StartsWith('.')))
        {
            if (File.Exists(Path.Combine(candidate, StudyFileName)))
            {
                yield return candidate;
            }
            else
            {
                foreach (var study in StudyFolders(candidate, level + 1))
                {
                    yield return study;
                }
            }
        }
    }
}
