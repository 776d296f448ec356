namespace Tarry.Studies.Reports;

/// <summary>A field of a report: where it lies in the bytes and what it means, so that it can be read again from them.</summary>
/// <remarks>The words are those of the USB Device Class Definition for Human Interface Devices 1.11, section 6.2.2.</remarks>
public sealed record ReportField
{
    /// <summary>The name of its column in <c>reports.parquet</c>.</summary>
    public required string Column { get; init; }

    /// <summary>The endpoint whose reports have it.</summary>
    public required int Endpoint { get; init; }

    /// <summary>The report id; null where the reports have none.</summary>
    public required int? ReportId { get; init; }

    /// <summary>The first bit, from the first byte of the stored report on, the least significant bit of each byte first.</summary>
    public required int BitOffset { get; init; }

    /// <summary>How many bits, 1 to 32.</summary>
    public required int BitSize { get; init; }

    /// <summary>Whether the bits say which of the usages is active (an array), not how much of one (a variable).</summary>
    public bool IsArray { get; init; }

    /// <summary>Whether the value is a change since the report before.</summary>
    public bool IsRelative { get; init; }

    /// <summary>Whether a value outside the logical range means that there is none.</summary>
    public bool HasNullState { get; init; }

    /// <summary>The least value; where it is negative the bits are two's complement.</summary>
    public required long LogicalMinimum { get; init; }

    /// <summary>The greatest value.</summary>
    public required long LogicalMaximum { get; init; }

    /// <summary>What the least value stands for; both 0 where not stated, which means the logical range.</summary>
    public long PhysicalMinimum { get; init; }

    /// <summary>What the greatest value stands for.</summary>
    public long PhysicalMaximum { get; init; }

    /// <summary>The unit's nibbles as in the descriptor; 0 for none.</summary>
    public long Unit { get; init; }

    /// <summary>The power of ten of the unit.</summary>
    public int UnitExponent { get; init; }

    /// <summary>What it is of: one usage for a variable, those that can be chosen for an array.</summary>
    public required IReadOnlyList<UsageRange> Usages { get; init; }

    /// <summary>
    /// The value in a report: of a variable the number, null in its null state; of an array the usage that is active, null where none is;
    /// null too where the report is too short.
    /// </summary>
    /// <param name="report">The report as stored, its id first where it has one in the bytes.</param>
    public long? ValueIn(ReadOnlySpan<byte> report)
    {
        if (BitOffset < 0 || BitSize is < 1 or > 32 || (long)BitOffset + BitSize > report.Length * 8L)
        {
            return null;
        }

        var bits = Bits(report);
        var value = LogicalMinimum < 0 ? bits << (64 - BitSize) >> (64 - BitSize) : bits;
        var inside = value >= LogicalMinimum && value <= LogicalMaximum;
        return IsArray ? (inside ? UsageAt(value - LogicalMinimum) : null)
            : inside || !HasNullState ? value : null;
    }

    private long Bits(ReadOnlySpan<byte> report)
    {
        var (first, last) = (BitOffset / 8, (BitOffset + BitSize - 1) / 8);
        long bits = 0;
        for (var index = last; index >= first; index--)
        {
            bits = (bits << 8) | report[index];
        }

        return (bits >> (BitOffset % 8)) & ((1L << BitSize) - 1);
    }

    private long? UsageAt(long index)
    {
        foreach (var range in Usages)
        {
            var count = (long)range.Last - range.First + 1;
            if (index < count)
            {
                return range.First + index;
            }

            index -= count;
        }

        return null;
    }
}
