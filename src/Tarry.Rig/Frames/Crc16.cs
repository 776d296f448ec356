namespace Tarry.Rig.Frames;

/// <summary>The checksum of a frame: CRC-16/CCITT-FALSE, catalogued as CRC-16/IBM-3740.</summary>
/// <remarks>Polynomial 0x1021, start 0xffff, no reflection, no final xor; the check value of <c>123456789</c> is 0x29b1.</remarks>
public static class Crc16
{
    private const ushort Polynomial = 0x1021;
    private static readonly ushort[] Table = MakeTable();

    /// <summary>The checksum of some bytes.</summary>
    public static ushort Compute(ReadOnlySpan<byte> bytes)
    {
        ushort crc = 0xffff;
        foreach (var value in bytes)
        {
            crc = (ushort)((crc << 8) ^ Table[(crc >> 8) ^ value]);
        }

        return crc;
    }

    private static ushort[] MakeTable()
    {
        var table = new ushort[256];
        for (var index = 0; index < table.Length; index++)
        {
            var crc = index << 8;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc & 0x8000) != 0 ? (crc << 1) ^ Polynomial : crc << 1;
            }

            table[index] = (ushort)crc;
        }

        return table;
    }
}
