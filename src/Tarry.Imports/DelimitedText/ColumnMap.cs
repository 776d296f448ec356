namespace Tarry.Imports.DelimitedText;

/// <summary>Which column holds what; -1 where there is none.</summary>
internal sealed record ColumnMap
{
    public required string[] Header { get; init; }

    public required int Condition { get; init; }

    public required int Sitting { get; init; }

    public required int Sequence { get; init; }

    public required int PressTime { get; init; }

    public required TimeUnit PressTimeUnit { get; init; }

    public required int Latency { get; init; }

    public required TimeUnit LatencyUnit { get; init; }

    /// <summary>The upper bound of a latency that is known as an interval; in the unit that its name ends with.</summary>
    public required int LatencyHigh { get; init; }

    public required TimeUnit LatencyHighUnit { get; init; }

    public required int Outcome { get; init; }

    public required int Flags { get; init; }

    public required int Edges { get; init; }

    public required int Excluded { get; init; }

    public required int NominalReportHz { get; init; }

    /// <summary>Factors by their key.</summary>
    public required IReadOnlyList<(string Key, int Index)> Factors { get; init; }

    /// <summary>Columns that nothing is taken from.</summary>
    public required IReadOnlyList<string> Unused { get; init; }

    public int Count => Header.Length;
}
