using System.Collections.Concurrent;

namespace Tarry.Web.Shelf;

/// <summary>The summaries of all studies on the shelf; one is made again only when its study has changed on the disk.</summary>
/// <param name="shelf">The shelf.</param>
/// <param name="time">The time zone for days.</param>
public sealed class StudySummaries(StudyShelf shelf, TimeProvider time)
{
    private readonly ConcurrentDictionary<string, (StudyStamp Stamp, StudySummary Summary)> known = new(StringComparer.Ordinal);

    /// <summary>The studies, those whose data are newest first, then those that changed last; read on another thread.</summary>
    public Task<IReadOnlyList<StudySummary>> Read() => Task.Run<IReadOnlyList<StudySummary>>(() =>
    [
        .. shelf.Names()
            .AsParallel()
            .Select(Summary)
            .OrderByDescending(summary => summary.Dates?.Last ?? DateOnly.FromDateTime(summary.ChangedAt.UtcDateTime))
            .ThenByDescending(summary => summary.ChangedAt)
            .ThenBy(summary => summary.Name, StringComparer.Ordinal),
    ]);

    private StudySummary Summary(string name)
    {
        var folder = Path.Combine([shelf.Folder, .. name.Split('/')]);
        var stamp = StudyStamp.Of(folder);
        if (known.TryGetValue(name, out var cached) && cached.Stamp == stamp && cached.Summary.OpenSessions == 0)
        {
            return cached.Summary;
        }

        var summary = StudySummary.Of(name, folder, stamp.ChangedAt, time.LocalTimeZone);
        known[name] = (stamp, summary);
        return summary;
    }
}
