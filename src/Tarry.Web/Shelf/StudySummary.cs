using Tarry.Studies;

namespace Tarry.Web.Shelf;

/// <summary>A study on the shelf at a glance, or why it cannot be read.</summary>
public sealed record StudySummary
{
    /// <summary>Its place below the shelf's folder, with <c>/</c>: what stands in addresses.</summary>
    public required string Name { get; init; }

    /// <summary>Its title; its name where it cannot be read.</summary>
    public required string Title { get; init; }

    /// <summary>When its study file or its manifest last changed.</summary>
    public required DateTimeOffset ChangedAt { get; init; }

    /// <summary>When its data were captured; null where it has none.</summary>
    public StudyDates? Dates { get; init; }

    /// <summary>The ids of its conditions, in file order.</summary>
    public IReadOnlyList<string> Conditions { get; init; } = [];

    /// <summary>Every level of every factor, by the factor, each once.</summary>
    public ILookup<string, string> Levels { get; init; } = Array.Empty<string>().ToLookup(level => level);

    /// <summary>Its sittings, in order of name.</summary>
    public IReadOnlyList<string> Sittings { get; init; } = [];

    /// <summary>How many sessions it has.</summary>
    public int Sessions { get; init; }

    /// <summary>Trials captured in its sealed sessions.</summary>
    public long Trials { get; init; }

    /// <summary>Reports in its sealed sessions.</summary>
    public long Reports { get; init; }

    /// <summary>Sessions whose capture is not finished, so that their trials are not counted yet.</summary>
    public int OpenSessions { get; init; }

    /// <summary>Why it cannot be read; null where it can.</summary>
    public StudyException? Problem { get; init; }

    /// <summary>The summary of a study folder.</summary>
    /// <param name="name">Its name on the shelf.</param>
    /// <param name="folder">The folder.</param>
    /// <param name="changedAt">When it last changed.</param>
    /// <param name="zone">The time zone for days.</param>
    public static StudySummary Of(string name, string folder, DateTimeOffset changedAt, TimeZoneInfo zone)
    {
        try
        {
            var study = Study.Open(folder);
            var sessions = study.Outline;
            return new StudySummary
            {
                Name = name,
                Title = study.File.Title,
                ChangedAt = changedAt,
                Dates = StudyDates.Of(sessions, zone),
                Conditions = [.. study.File.Conditions.Select(condition => condition.Id)],
                Levels = study.File.Conditions.SelectMany(condition => condition.Factors).Distinct().ToLookup(factor => factor.Key, factor => factor.Value),
                Sittings = [.. sessions.Select(session => session.Key.Sitting).Distinct()],
                Sessions = sessions.Count,
                Trials = sessions.Sum(session => session.Trials ?? 0),
                Reports = sessions.Sum(session => session.Reports ?? 0),
                OpenSessions = sessions.Count(session => !session.IsSealed),
            };
        }
        catch (StudyException problem)
        {
            return new StudySummary { Name = name, Title = name, ChangedAt = changedAt, Problem = problem };
        }
    }
}
