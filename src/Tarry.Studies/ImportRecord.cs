using Tarry.Studies.Sessions;

namespace Tarry.Studies;

/// <summary>What became of one imported file: kept in <c>imports/</c>.</summary>
public sealed record ImportRecord
{
    /// <summary>The file's name without its folder.</summary>
    public required string FileName { get; init; }

    /// <summary>SHA-256 of the file, lower-case hex.</summary>
    public required string Sha256 { get; init; }

    /// <summary>The format it was read as.</summary>
    public required string Format { get; init; }

    /// <summary>The options that it was read with, by name.</summary>
    public IReadOnlyDictionary<string, string> Options { get; init; } = new Dictionary<string, string>();

    /// <summary>The sessions that it gave, by their folders in <c>sessions/</c>; filled in when it is stored.</summary>
    public IReadOnlyList<string> Sessions { get; init; } = [];

    /// <summary>Rows in the file, whatever became of them.</summary>
    public required long RowsRead { get; init; }

    /// <summary>Rows that became trials with their own outcome.</summary>
    public required long RowsKept { get; init; }

    /// <summary>Rows that were refused.</summary>
    public required long RefusedTotal { get; init; }

    /// <summary>How many rows were refused for which reason.</summary>
    public IReadOnlyDictionary<string, long> RefusedByReason { get; init; } = new Dictionary<string, long>();

    /// <summary>The first 1,000 of them.</summary>
    public IReadOnlyList<RefusedItem> Refused { get; init; } = [];

    /// <summary>Refused rows that belong to no session, so that no session counts them.</summary>
    public long RefusedUnassigned { get; init; }
}
