using Tarry.Studies.Reports;

namespace Tarry.Imports.HidReports;

/// <summary>What one main item makes: one or several values side by side, all of one form (HID 1.11, 6.2.2.5).</summary>
public sealed record HidField
{
    /// <summary>The byte of the descriptor at which its main item begins.</summary>
    public required int Offset { get; init; }

    /// <summary>Which way.</summary>
    public required HidReportKind Kind { get; init; }

    /// <summary>The report; null where the descriptor uses no ids.</summary>
    public required int? ReportId { get; init; }

    /// <summary>The first bit in the report, its id not counted.</summary>
    public required int BitOffset { get; init; }

    /// <summary>Bits of each value.</summary>
    public required int BitSize { get; init; }

    /// <summary>How many values.</summary>
    public required int Count { get; init; }

    /// <summary>The bits of the main item: 1 constant, 2 variable, 4 relative, 8 wrap, 0x10 non-linear, 0x20 no preferred state, 0x40 null state.</summary>
    public required uint Flags { get; init; }

    /// <summary>The least value.</summary>
    public required long LogicalMinimum { get; init; }

    /// <summary>The greatest value.</summary>
    public required long LogicalMaximum { get; init; }

    /// <summary>What the least value stands for; 0 with a maximum of 0 where it is the logical range.</summary>
    public required int PhysicalMinimum { get; init; }

    /// <summary>What the greatest value stands for.</summary>
    public required int PhysicalMaximum { get; init; }

    /// <summary>The unit, nibble by nibble (HID 1.11, 6.2.2.7); 0 for none.</summary>
    public required uint Unit { get; init; }

    /// <summary>The power of ten of the unit, -8 to 7.</summary>
    public required int UnitExponent { get; init; }

    /// <summary>The usages in the order in which they are given; of alternatives between delimiters the first.</summary>
    public required IReadOnlyList<UsageRange> Usages { get; init; }

    /// <summary>Padding: bits that say nothing.</summary>
    public bool IsConstant => (Flags & 1) != 0;

    /// <summary>Each value is of one usage; else each says which usage is active.</summary>
    public bool IsVariable => (Flags & 2) != 0;

    /// <summary>Changes, not positions.</summary>
    public bool IsRelative => (Flags & 4) != 0;

    /// <summary>A value outside the logical range means that there is none.</summary>
    public bool HasNullState => (Flags & 0x40) != 0;

    /// <summary>The usage of a value of a variable field: that of its place, the last one for all beyond; null where none is stated.</summary>
    public UsageRange? UsageOf(int index)
    {
        foreach (var range in Usages)
        {
            var count = range.Last - range.First + 1;
            if (index < count)
            {
                return new UsageRange(range.Page, range.First + index, range.First + index);
            }

            index -= count;
        }

        return Usages.Count == 0 ? null : Usages[^1] with { First = Usages[^1].Last };
    }
}
