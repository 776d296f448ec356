using System.Buffers.Binary;

namespace Tarry.Imports.PacketCapture.Usb;

/// <summary>Reads the header that Linux puts before a transfer: 48 bytes (link type 189) or 64 (220), in the byte order of the file.</summary>
/// <remarks>Documentation/usb/usbmon.rst of the Linux kernel; LINKTYPE_USB_LINUX and LINKTYPE_USB_LINUX_MMAPPED.</remarks>
internal static class UsbMonHeader
{
    public const int LinkType = 189;
    public const int MappedLinkType = 220;
    private const int Length = 48;
    private const int MappedLength = 64;
    private const int IsochronousDescriptor = 16;

    /// <summary>The transfer; false with the reason where the packet is none.</summary>
    public static bool Read(ReadOnlySpan<byte> packet, bool mapped, bool bigEndian, out UsbTransfer transfer, out string defect)
    {
        transfer = default;
        defect = "";
        var head = mapped ? MappedLength : Length;
        if (packet.Length < head)
        {
            defect = $"a USB packet of {packet.Length} bytes is shorter than its header of {head}";
            return false;
        }

        var type = packet[8];
        if (type is not ((byte)'S' or (byte)'C' or (byte)'E') || packet[9] > 3)
        {
            defect = $"a USB packet has the event type {type} and transfer type {packet[9]}";
            return false;
        }

        var xfer = (UsbTransferType)packet[9];
        var captured = UInt32(packet[36..], bigEndian);
        var skipped = xfer == UsbTransferType.Isochronous && mapped ? UInt32(packet[60..], bigEndian) * (long)IsochronousDescriptor : 0;
        var rest = packet[(int)Math.Min(head + skipped, packet.Length)..];
        transfer = new UsbTransfer
        {
            Id = bigEndian ? BinaryPrimitives.ReadUInt64BigEndian(packet) : BinaryPrimitives.ReadUInt64LittleEndian(packet),
            Bus = bigEndian ? BinaryPrimitives.ReadUInt16BigEndian(packet[12..]) : BinaryPrimitives.ReadUInt16LittleEndian(packet[12..]),
            Device = packet[11],
            Endpoint = packet[10],
            Type = xfer,
            IsCompletion = type == (byte)'C',
            Succeeded = type == (byte)'C' && UInt32(packet[28..], bigEndian) == 0,
            Interval = mapped ? (int)UInt32(packet[48..], bigEndian) : 0,
            Setup = packet[14] == 0 && xfer == UsbTransferType.Control ? packet.Slice(40, 8) : default,
            Data = rest[..(int)Math.Min(captured, rest.Length)],
            // On a submission the length is that of the buffer; only what came back can be cut.
            CutShort = captured > rest.Length || (type == (byte)'C' && (packet[10] & 0x80) != 0 && captured < UInt32(packet[32..], bigEndian)),
        };
        return true;
    }

    private static uint UInt32(ReadOnlySpan<byte> at, bool bigEndian) =>
        bigEndian ? BinaryPrimitives.ReadUInt32BigEndian(at) : BinaryPrimitives.ReadUInt32LittleEndian(at);
}
