using System.Buffers.Binary;

namespace Tarry.Imports.PacketCapture.Files;

/// <summary>Tells the formats by their first bytes.</summary>
public static class CaptureMagic
{
    /// <summary>How many bytes it takes.</summary>
    public const int Length = 8;

    internal const uint PcapMicroseconds = 0xA1B2C3D4;
    internal const uint PcapNanoseconds = 0xA1B23C4D;
    internal const uint SectionHeader = 0x0A0D0D0A;

    /// <summary>The format that begins like this; null if none does.</summary>
    /// <param name="start">The first bytes of the file.</param>
    public static CaptureFormat? FormatOf(ReadOnlySpan<byte> start)
    {
        if (start.StartsWith("btsnoop\0"u8))
        {
            return CaptureFormat.BtSnoop;
        }

        return start.Length < 4 ? null : BinaryPrimitives.ReadUInt32LittleEndian(start) switch
        {
            SectionHeader => CaptureFormat.PcapNg,
            PcapMicroseconds or PcapNanoseconds or 0xD4C3B2A1 or 0x4D3CB2A1 => CaptureFormat.Pcap,
            _ => null,
        };
    }
}
