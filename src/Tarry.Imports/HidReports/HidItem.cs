namespace Tarry.Imports.HidReports;

/// <summary>An item of a report descriptor (HID 1.11, 6.2.2.1 to 6.2.2.3).</summary>
/// <param name="Offset">The byte that it begins at.</param>
/// <param name="Type">Its type.</param>
/// <param name="Tag">Its tag; of a long item the tag byte.</param>
/// <param name="Size">Bytes of data: 0, 1, 2 or 4; of a long item up to 255.</param>
/// <param name="Data">The data of a short item, unsigned.</param>
public readonly record struct HidItem(int Offset, HidItemType Type, int Tag, int Size, uint Data)
{
    /// <summary>The data as two's complement of its size.</summary>
    public int SignedData => Size switch
    {
        1 => (sbyte)Data,
        2 => (short)Data,
        _ => (int)Data,
    };
}
