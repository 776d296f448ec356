using System.Globalization;
using System.Text;

namespace Tarry.Rig.Tests.Frames;

/// <summary>Frames made without the code under test: CRC-16/IBM-3740 a bit at a time, straight from the catalogue's parameters.</summary>
internal static class PlainFrame
{
    public static byte[] Seal(string body) => Encoding.ASCII.GetBytes($"{body}*{Checksum(body)}\n");

    public static string Checksum(string body)
    {
        var crc = 0xffff;
        foreach (var letter in body)
        {
            for (var bit = 7; bit >= 0; bit--)
            {
                var high = ((crc >> 15) & 1) ^ ((letter >> bit) & 1);
                crc = ((crc << 1) & 0xffff) ^ (high * 0x1021);
            }
        }

        return crc.ToString("x4", CultureInfo.InvariantCulture);
    }
}
