using Tarry.Studies.Sessions;

namespace Tarry.Web.Publishing;

/// <summary>The folder <c>report</c> of a study: what is published goes there, and only what is there is given out.</summary>
public static class PublishedFolder
{
    private const string Name = "report";

    /// <summary>The folder to write to.</summary>
    /// <param name="studyFolder">The study folder.</param>
    /// <param name="subfolder">A name inside it; null for itself.</param>
    /// <exception cref="ArgumentException">The name is none.</exception>
    public static string Of(string studyFolder, string? subfolder) => subfolder is null
        ? Path.Combine(studyFolder, Name)
        : Path.Combine(studyFolder, Name, Names.Require(subfolder, nameof(subfolder)));

    /// <summary>The files in it, those of the deepest folders last, in order of name.</summary>
    /// <param name="studyFolder">The study folder.</param>
    /// <param name="most">At most so many.</param>
    public static IReadOnlyList<PublishedFile> Files(string studyFolder, int most)
    {
        var root = new DirectoryInfo(Of(studyFolder, null));
        if (!root.Exists)
        {
            return [];
        }

        var options = new EnumerationOptions { RecurseSubdirectories = true, MaxRecursionDepth = 4, AttributesToSkip = FileAttributes.Hidden | FileAttributes.ReparsePoint };
        return
        [
            .. root.EnumerateFiles("*", options)
                .Select(file => new PublishedFile(Path.GetRelativePath(root.FullName, file.FullName).Replace('\\', '/'), file.Length, file.LastWriteTimeUtc))
                .OrderBy(file => file.Name.Count(letter => letter == '/'))
                .ThenBy(file => file.Name, StringComparer.Ordinal)
                .Take(most),
        ];
    }

    /// <summary>The file that a path inside the folder names; null where it names none there: nothing leads out of it, by dots, by links or by hidden names.</summary>
    /// <param name="studyFolder">The study folder.</param>
    /// <param name="path">The path, with <c>/</c>.</param>
    public static FileInfo? Find(string studyFolder, string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var parts = path.Split('/');
        if (parts.Any(part => part.Length == 0 || part[0] == '.' || part.AsSpan().IndexOfAny("\\:\0") >= 0))
        {
            return null;
        }

        var at = Of(studyFolder, null);
        foreach (var part in (string[])["", .. parts])
        {
            at = Path.Combine(at, part);
            if (!Path.Exists(at) || File.GetAttributes(at).HasFlag(FileAttributes.ReparsePoint))
            {
                return null;
            }
        }

        return File.Exists(at) ? new FileInfo(at) : null;
    }
}
