using System.Globalization;
using System.Text;

namespace Tarry.Imports.Tests.UsbWire;

/// <summary>Writes what is on a USB cable at low speed as a value change dump, by chapters 7 and 8 of the Universal Serial Bus Specification 2.0 (from memory).</summary>
internal static class CableText
{
    private const int Out = 0x1;
    private const int In = 0x9;
    private const int Setup = 0xD;
    private const int Acknowledged = 0x2;
    private const int Data0 = 0x3;
    private const int Data1 = 0xB;

    // Ticks of 10 ns; 1.5 Mbit/s.
    private const double BitTicks = 1e8 / 1.5e6;

    /// <summary>Reports of a device at address 5, endpoint 1, each 8 ms; before them its device descriptor is asked for.</summary>
    public static string Of(params byte[][] reports)
    {
        var text = new StringBuilder("$timescale 10 ns $end\n$var wire 1 p DP $end\n$var wire 1 m DM $end\n$enddefinitions $end\n#0 0p 1m\n");
        var time = 1_000.0;
        byte[] descriptor = [18, 1, 0, 2, 0, 0, 0, 8, 0x09, 0x12, 1, 0, 0, 1, 1, 2, 0, 1];
        Transaction(text, ref time, Setup, 0, Data0, [0x80, 6, 0, 1, 0, 0, 18, 0]);
        for (var from = 0; from < descriptor.Length; from += 8)
        {
            Transaction(text, ref time, In, 0, from % 16 == 0 ? Data1 : Data0, descriptor[from..Math.Min(from + 8, descriptor.Length)]);
        }

        // The status of a control transfer: nothing, the other way.
        Transaction(text, ref time, Out, 0, Data1, []);
        for (var index = 0; index < reports.Length; index++)
        {
            time += 800_000;
            Transaction(text, ref time, In, 1, index % 2 == 0 ? Data0 : Data1, reports[index]);
        }

        return text.Append(CultureInfo.InvariantCulture, $"#{(long)time + 100_000} 0p 1m\n").ToString();
    }

    private static void Transaction(StringBuilder text, ref double time, int token, int endpoint, int data, byte[] content)
    {
        var address = 5 | (endpoint << 7);
        var check = Crc5(address);
        Packet(text, ref time, [Identifier(token), (byte)address, (byte)((address >> 8) | (check << 3))]);
        var crc = Crc16(content);
        Packet(text, ref time, [Identifier(data), .. content, (byte)crc, (byte)(crc >> 8)]);
        Packet(text, ref time, [Identifier(Acknowledged)]);
    }

    private static byte Identifier(int number) => (byte)(number | (~number << 4));

    private static void Packet(StringBuilder text, ref double time, byte[] bytes)
    {
        List<bool> bits = [false, false, false, false, false, false, false, true];
        var ones = 1;
        foreach (var bit in bytes.SelectMany(value => Enumerable.Range(0, 8).Select(place => (value >> place & 1) == 1)))
        {
            bits.Add(bit);
            ones = bit ? ones + 1 : 0;
            if (ones == 6)
            {
                bits.Add(false);
                ones = 0;
            }
        }

        // Idle at low speed: D- high. A 0 is a change, a 1 is none.
        var plus = false;
        foreach (var bit in bits)
        {
            if (!bit)
            {
                plus = !plus;
                text.Append(CultureInfo.InvariantCulture, $"#{(long)time} {(plus ? '1' : '0')}p {(plus ? '0' : '1')}m\n");
            }

            time += BitTicks;
        }

        text.Append(CultureInfo.InvariantCulture, $"#{(long)time} 0p 0m\n");
        time += 2 * BitTicks;
        text.Append(CultureInfo.InvariantCulture, $"#{(long)time} 0p 1m\n");
        time += 4 * BitTicks;
    }

    // x^5 + x^2 + 1 over the eleven bits of address and endpoint, begun with ones, inverted; the first bit out is the highest.
    private static int Crc5(int content)
    {
        var crc = 0x1F;
        for (var bit = 0; bit < 11; bit++)
        {
            var carry = (crc >> 4) ^ (content >> bit & 1);
            crc = ((crc << 1) & 0x1F) ^ (carry == 1 ? 0x05 : 0);
        }

        return Mirrored(~crc & 0x1F, 5);
    }

    private static int Crc16(byte[] content)
    {
        var crc = 0xFFFF;
        foreach (var value in content)
        {
            for (var bit = 0; bit < 8; bit++)
            {
                var carry = (crc >> 15) ^ (value >> bit & 1);
                crc = ((crc << 1) & 0xFFFF) ^ (carry == 1 ? 0x8005 : 0);
            }
        }

        return Mirrored(~crc & 0xFFFF, 16);
    }

    private static int Mirrored(int value, int width) => Enumerable.Range(0, width).Sum(bit => (value >> bit & 1) << (width - 1 - bit));
}
