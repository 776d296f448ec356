using Tarry.Studies.Reports;

namespace Tarry.Imports.HidReports;

/// <summary>The local items since the last main item (HID 1.11, 6.2.2.8).</summary>
internal sealed class HidLocals
{
    // As HID_MAX_USAGES of the Linux HID core: beyond it a descriptor is malformed.
    private const int MostRanges = 12_288;
    private readonly List<(uint First, uint Last, int Size)> ranges = [];
    private (uint Usage, int Size)? minimum;
    private (uint Usage, int Size)? maximum;
    private bool delimited;
    private bool alternativeTaken;

    /// <summary>The usages; where a usage of up to two bytes stands for a page, it is the one that holds at the main item.</summary>
    public IReadOnlyList<UsageRange> Usages(int page) =>
        [.. ranges.Select(range => range.Size == 4
            ? new UsageRange((int)(range.First >> 16), (int)(range.First & 0xFFFF), (int)(range.Last & 0xFFFF))
            : new UsageRange(page, (int)(range.First & 0xFFFF), (int)(range.Last & 0xFFFF)))];

    /// <summary>Takes an item.</summary>
    /// <returns>What is wrong with it; null if nothing is.</returns>
    public HidProblem? Take(HidItem item)
    {
        switch (item.Tag)
        {
            case 0:
                Add(item.Data, item.Data, item.Size);
                return null;
            case 1:
                minimum = (item.Data, item.Size);
                return Complete(item);
            case 2:
                maximum = (item.Data, item.Size);
                return Complete(item);
            case 10:
                return Delimit(item);
            default:
                // 3 to 5 designators, 7 to 9 strings: they say nothing of the bits.
                return item.Tag is >= 3 and <= 9 and not 6 ? null : new HidProblem(HidProblemKind.ReservedTag, item.Offset, $"the local tag {item.Tag} is not defined");
        }
    }

    /// <summary>What is still open at a main item.</summary>
    public HidProblem? Open(int offset) =>
        delimited ? new HidProblem(HidProblemKind.DelimiterBroken, offset, "a delimiter is not closed before the main item")
            : minimum is not null || maximum is not null ? new HidProblem(HidProblemKind.UsageRangeBroken, offset, "a range of usages has one end only")
            : null;

    private HidProblem? Complete(HidItem item)
    {
        if (minimum is not { } low || maximum is not { } high)
        {
            return null;
        }

        (minimum, maximum) = (null, null);
        // One end may carry the page and the other not.
        var page = Math.Max(low.Size == 4 ? low.Usage >> 16 : 0, high.Size == 4 ? high.Usage >> 16 : 0) << 16;
        var (first, last) = (low.Usage & 0xFFFF, high.Usage & 0xFFFF);
        if (last < first)
        {
            return new HidProblem(HidProblemKind.UsageRangeBroken, item.Offset, $"the greatest usage {last} is below the least {first}");
        }

        Add(page | first, page | last, Math.Max(low.Size, high.Size));
        return null;
    }

    private HidProblem? Delimit(HidItem item)
    {
        if ((item.Data == 1) == delimited)
        {
            return new HidProblem(HidProblemKind.DelimiterBroken, item.Offset, delimited ? "a delimiter is opened within another" : "a delimiter is closed that is not open");
        }

        (delimited, alternativeTaken) = (item.Data == 1, false);
        return null;
    }

    private void Add(uint first, uint last, int size)
    {
        if ((delimited && alternativeTaken) || ranges.Count >= MostRanges)
        {
            return;
        }

        alternativeTaken = delimited;
        ranges.Add((first, last, size));
    }
}
