namespace Tarry.Imports.UsbWire;

/// <summary>Reads and checks the bits of one packet.</summary>
/// <remarks>
/// Universal Serial Bus Specification 2.0, chapter 8 (from memory): the identifier is followed by its own complement; tokens carry CRC-5 (x^5 + x^2 + 1),
/// data CRC-16 (x^16 + x^15 + x^2 + 1), both begun with ones and sent inverted, least significant bit of the content first.
/// </remarks>
internal static class UsbPacketBits
{
    public const int Out = 0x1;
    public const int In = 0x9;
    public const int Setup = 0xD;
    public const int Acknowledged = 0x2;
    public const int Data0 = 0x3;
    public const int Data1 = 0xB;
    private const int SynchronisationBits = 8;

    /// <summary>The packet; null where it fails a check.</summary>
    public static UsbPacket? Read(long start, IReadOnlyList<bool> line)
    {
        if (Unstuffed(line) is not { } bits || bits.Count % 8 != 0 || bits.Count < 8)
        {
            return null;
        }

        var bytes = new byte[bits.Count / 8];
        for (var index = 0; index < bits.Count; index++)
        {
            bytes[index / 8] |= (byte)(bits[index] ? 1 << (index % 8) : 0);
        }

        var identifier = bytes[0] & 0xF;
        if (identifier != (~bytes[0] >> 4 & 0xF))
        {
            return null;
        }

        return identifier switch
        {
            In or Out or Setup => bytes.Length == 3 && TokenCheck(bytes[1] | (bytes[2] << 8)) ? new UsbPacket(start, identifier, bytes[1..3]) : null,
            Data0 or Data1 => bytes.Length >= 3 && DataCheck(bytes.AsSpan(1)) ? new UsbPacket(start, identifier, bytes[1..^2]) : null,
            _ => new UsbPacket(start, identifier, []),
        };
    }

    private static List<bool>? Unstuffed(IReadOnlyList<bool> line)
    {
        var bits = new List<bool>(line.Count);
        var ones = 0;
        for (var index = 0; index < line.Count; index++)
        {
            if (ones == 6)
            {
                if (line[index])
                {
                    return null;
                }

                ones = 0;
                continue;
            }

            ones = line[index] ? ones + 1 : 0;
            if (index < SynchronisationBits)
            {
                if (line[index] != (index == SynchronisationBits - 1))
                {
                    return null;
                }
            }
            else
            {
                bits.Add(line[index]);
            }
        }

        return bits;
    }

    /// <summary>Address and endpoint with their CRC-5 leave the residual 01100.</summary>
    private static bool TokenCheck(int content)
    {
        var crc = 0x1F;
        for (var bit = 0; bit < 16; bit++)
        {
            var carry = (crc >> 4) ^ ((content >> bit) & 1);
            crc = ((crc << 1) & 0x1F) ^ (carry == 1 ? 0x05 : 0);
        }

        return crc == 0x0C;
    }

    /// <summary>Content with its CRC-16 leaves the residual 0x800D.</summary>
    private static bool DataCheck(ReadOnlySpan<byte> content)
    {
        var crc = 0xFFFF;
        foreach (var value in content)
        {
            for (var bit = 0; bit < 8; bit++)
            {
                var carry = (crc >> 15) ^ ((value >> bit) & 1);
                crc = ((crc << 1) & 0xFFFF) ^ (carry == 1 ? 0x8005 : 0);
            }
        }

        return crc == 0x800D;
    }
}
