using Tarry.Studies.Trials;

namespace Tarry.Imports.DelimitedText;

/// <summary>The measured values of one row, times in nanoseconds.</summary>
internal struct ImportedRow
{
    /// <summary>Its number in the session, or <see cref="Unnumbered"/>.</summary>
    public long Sequence;
    public long Line;
    public long PressNanoseconds;
    public long LatencyNanoseconds;
    public long LatencyHighNanoseconds;
    public Outcome Outcome;
    public TrialFlags Flags;
    public byte Edges;
    public bool Excluded;

    /// <summary>A time that is not known.</summary>
    public const long Unknown = long.MinValue;

    /// <summary>A refused row that has no usable number of its own.</summary>
    public const long Unnumbered = -1;

    /// <summary>A row of which nothing is known but its place.</summary>
    public static ImportedRow At(long line) => new()
    {
        Sequence = Unnumbered,
        Line = line,
        PressNanoseconds = Unknown,
        LatencyNanoseconds = Unknown,
        LatencyHighNanoseconds = Unknown,
        Outcome = Outcome.Refused,
    };
}
