namespace Tarry.Imports.DelimitedText;

/// <summary>How a delimited text file is to be read, where its header does not say it. See <c>docs/formats/long-form-csv.md</c>.</summary>
public sealed record DelimitedTextOptions
{
    /// <summary>The column of the condition; null for <c>condition</c>.</summary>
    public string? ConditionColumn { get; init; }

    /// <summary>The column of the sitting; null for <c>sitting</c> or <c>session</c>.</summary>
    public string? SittingColumn { get; init; }

    /// <summary>The column of the trial's number in its session; null for <c>seq</c>.</summary>
    public string? SequenceColumn { get; init; }

    /// <summary>The column of the press time; null for <c>press_time</c> with or without a unit.</summary>
    public string? PressTimeColumn { get; init; }

    /// <summary>The column of the latency; null for <c>latency</c> with or without a unit.</summary>
    public string? LatencyColumn { get; init; }

    /// <summary>The column of the outcome; null for <c>outcome</c>.</summary>
    public string? OutcomeColumn { get; init; }

    /// <summary>The unit of the press times; null where the header's name ends with it.</summary>
    public TimeUnit? PressTimeUnit { get; init; }

    /// <summary>The unit of the latencies; null where the header's name ends with it.</summary>
    public TimeUnit? LatencyUnit { get; init; }

    /// <summary>Further columns that hold factors of the condition.</summary>
    public IReadOnlyList<string> FactorColumns { get; init; } = [];

    /// <summary>The character between cells; null to take the one of comma, semicolon and tab that the header has most of.</summary>
    public char? Delimiter { get; init; }

    /// <summary>Whether numbers are written with a decimal comma.</summary>
    public bool DecimalComma { get; init; }

    /// <summary>The names of the columns, where the file has no header; null to take its first row for the header.</summary>
    public IReadOnlyList<string>? Header { get; init; }

    /// <summary>A line that begins with this is left aside.</summary>
    public char CommentPrefix { get; init; } = '#';

    /// <summary>The condition of every row, where the file has no column for it.</summary>
    public string? Condition { get; init; }

    /// <summary>The sitting of every row, where the file has no column for it.</summary>
    public string? Sitting { get; init; }
}
