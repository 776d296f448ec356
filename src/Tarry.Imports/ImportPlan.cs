using Tarry.Studies;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Imports;

/// <summary>
/// What the import of a file would add to a study, and what it would not: read completely before anything is written, so that it
/// can be shown, or sealed.
/// </summary>
/// <remarks>Every row is in exactly one count: rows read = kept + refused, and of the refused some belong to no session.</remarks>
public sealed record ImportPlan
{
    /// <summary>The sessions, by key.</summary>
    public required IReadOnlyList<(SessionRecord Record, IReadOnlyList<Trial> Trials)> Sessions { get; init; }

    /// <summary>The sessions of the kind <c>reports</c>; a file gives these or the others.</summary>
    public IReadOnlyList<ReportSession> ReportSessions { get; init; } = [];

    /// <summary>The sessions of the kind <c>stick</c>, likewise.</summary>
    public IReadOnlyList<StickSession> StickSessions { get; init; } = [];

    /// <summary>The keys of all its sessions.</summary>
    public IEnumerable<SessionKey> Keys =>
        Sessions.Select(session => session.Record).Concat(ReportSessions.Select(session => session.Record)).Concat(StickSessions.Select(session => session.Record)).Select(record => record.Key);

    /// <summary>Conditions that the study does not have yet, in the order in which they were met.</summary>
    public required IReadOnlyList<ConditionEntry> NewConditions { get; init; }

    /// <summary>Trials that the file marks as excluded, as entries for the study file.</summary>
    public required IReadOnlyList<Exclusion> Exclusions { get; init; }

    /// <summary>The file, how it was read, and how many of its rows were kept and refused, and why.</summary>
    public required ImportRecord Record { get; init; }

    /// <summary>How the file was read: what was inferred, renamed, rounded or left aside. In words.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>What makes it doubtful that the recording was read as it was meant, in words; it is among the notes too.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Adds it to a study: all or nothing.</summary>
    /// <param name="study">The study whose conditions it was read for.</param>
    /// <param name="held">The right to write to it.</param>
    /// <param name="replacing">Why its sessions correct sealed ones of the same kind and keys; null: they are new.</param>
    /// <exception cref="StudyException">A session is there already. Nothing was imported.</exception>
    public void AddTo(Study study, StudyLock held, string? replacing = null)
    {
        ArgumentNullException.ThrowIfNull(study);
        if (StickSessions.Count > 0)
        {
            study.SealImported(held, StickSessions, Record, NewConditions, replacing);
        }
        else if (ReportSessions.Count > 0)
        {
            study.SealImported(held, ReportSessions, Record, NewConditions, replacing);
        }
        else
        {
            study.SealImported(held, Sessions, Record, NewConditions, Exclusions, replacing);
        }
    }

    /// <summary>Adds several to a study; that all are new to it, or all corrections, is seen before anything is made.</summary>
    /// <param name="plans">The plans.</param>
    /// <param name="study">The study whose conditions they were read for.</param>
    /// <param name="held">The right to write to it.</param>
    /// <param name="added">Told of each once it is in the study.</param>
    /// <param name="replacing">Why their sessions correct sealed ones of the same kind and keys; null: they are new.</param>
    /// <exception cref="ImportException">A session is there already, or one that is to be corrected is not. Nothing was imported.</exception>
    public static void AddAll(IReadOnlyList<ImportPlan> plans, Study study, StudyLock held, Action<ImportPlan>? added = null, string? replacing = null)
    {
        ArgumentNullException.ThrowIfNull(plans);
        ArgumentNullException.ThrowIfNull(study);
        var there = study.SessionKeys.Concat(study.ReportSessionKeys).Concat(study.StickKeys).ToHashSet();
        var missing = plans.SelectMany(plan => plan.Keys).Where(key => !there.Contains(key)).ToList();
        if (replacing is not null && missing.Count > 0)
        {
            throw new ImportException(
                $"The study has no {string.Join(", ", missing)} to correct; nothing was imported.",
                missing[0].ToString(),
                "Import what is new without --correction.");
        }

        var taken = plans.SelectMany(plan => plan.Keys).Where(there.Contains).ToList();
        if (replacing is null && taken.Count > 0)
        {
            throw new ImportException(
                $"The study has {string.Join(", ", taken)} already; nothing was imported.",
                taken[0].ToString(),
                "Import under another sitting (--sitting, or the sitting column), or put it in the place of the earlier one with 'tarry import --correction REASON'.");
        }

        foreach (var plan in plans)
        {
            plan.AddTo(study, held, replacing);
            added?.Invoke(plan);
        }
    }
}
