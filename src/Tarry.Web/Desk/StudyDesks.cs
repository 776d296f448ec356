using System.Collections.Concurrent;
using Tarry.Web.Hosting;
using Tarry.Web.Shelf;

namespace Tarry.Web.Desk;

/// <summary>One desk for each study that somebody has opened, shared by all windows.</summary>
/// <param name="shelf">Where studies are.</param>
/// <param name="options">The version for the findings.</param>
public sealed class StudyDesks(StudyShelf shelf, ServeOptions options)
{
    private readonly ConcurrentDictionary<string, StudyDesk> desks = new(StringComparer.Ordinal);

    /// <summary>The desk of a study by its name on the shelf; null where the shelf has none of that name.</summary>
    public StudyDesk? Of(string name) => shelf.FolderOf(name) is { } folder
        ? desks.GetOrAdd(name, _ => new StudyDesk(name, folder, options.Version))
        : null;
}
