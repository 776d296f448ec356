using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Imports;

/// <summary>
/// What an import would add to a study, and what it would not: read completely before anything is written, so that it can be
/// shown, or sealed.
/// </summary>
/// <remarks>Every row is in exactly one count: rows read = kept + refused + unassigned.</remarks>
public sealed record ImportPlan
{
    /// <summary>The sessions, by key.</summary>
    public required IReadOnlyList<ImportedSession> Sessions { get; init; }

    /// <summary>Conditions that the study does not have yet, in the order in which they were met.</summary>
    public required IReadOnlyList<ConditionEntry> NewConditions { get; init; }

    /// <summary>Trials that a file marks as excluded, as entries for the study file.</summary>
    public required IReadOnlyList<Exclusion> Exclusions { get; init; }

    /// <summary>The file.</summary>
    public required SourceFile Source { get; init; }

    /// <summary>Rows below the header, whatever became of them; blank lines and comments are no rows.</summary>
    public required long RowsRead { get; init; }

    /// <summary>Rows that became a response, a missed or an early trial.</summary>
    public required long RowsKept { get; init; }

    /// <summary>Rows that became a refused trial of their session.</summary>
    public required long RowsRefused { get; init; }

    /// <summary>Refused rows whose session could not be told.</summary>
    public required long RowsUnassigned { get; init; }

    /// <summary>How many of the refused and unassigned rows there are for each kind of reason, the most frequent first.</summary>
    public required IReadOnlyDictionary<string, long> RefusedByReason { get; init; }

    /// <summary>The refused and unassigned rows by file and line, and what exactly was wrong: the first 1,000.</summary>
    public required IReadOnlyList<RefusedItem> Refused { get; init; }

    /// <summary>How the file was read: what was inferred, renamed, rounded or left aside. In words.</summary>
    public required IReadOnlyList<string> Notes { get; init; }
}
