using System.Buffers.Binary;
using static System.FormattableString;

namespace Tarry.Imports.HidReports;

/// <summary>Splits a report descriptor into items.</summary>
internal static class HidItems
{
    private const byte LongItemPrefix = 0xFE;

    public static List<HidItem> Split(ReadOnlySpan<byte> descriptor, List<HidProblem> problems)
    {
        var items = new List<HidItem>();
        var at = 0;
        while (at < descriptor.Length)
        {
            var prefix = descriptor[at];
            var isLong = prefix == LongItemPrefix;
            var head = isLong ? 3 : 1;
            var size = isLong ? (at + 1 < descriptor.Length ? descriptor[at + 1] : 0) : (prefix & 3) == 3 ? 4 : prefix & 3;
            if (at + head + size > descriptor.Length)
            {
                problems.Add(new HidProblem(
                    HidProblemKind.ItemCutOff, at, Invariant($"an item needs {head + size} bytes, and {descriptor.Length - at} are left")));
                break;
            }

            items.Add(isLong
                ? new HidItem(at, HidItemType.LongItem, descriptor[at + 2], size, 0)
                : new HidItem(at, (HidItemType)((prefix >> 2) & 3), prefix >> 4, size, Data(descriptor.Slice(at + 1, size))));
            at += head + size;
        }

        return items;
    }

    private static uint Data(ReadOnlySpan<byte> data) => data.Length switch
    {
        0 => 0,
        1 => data[0],
        2 => BinaryPrimitives.ReadUInt16LittleEndian(data),
        _ => BinaryPrimitives.ReadUInt32LittleEndian(data),
    };
}
