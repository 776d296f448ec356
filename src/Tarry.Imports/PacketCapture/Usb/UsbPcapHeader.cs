using System.Buffers.Binary;

namespace Tarry.Imports.PacketCapture.Usb;

/// <summary>Reads the header that USBPcap on Windows puts before a transfer (link type 249); always little-endian.</summary>
/// <remarks>LINKTYPE_USBPCAP: length, request id, status, function, info, bus, device, endpoint, transfer, data length; of a control transfer its stage.</remarks>
internal static class UsbPcapHeader
{
    public const int LinkType = 249;
    private const int Length = 27;
    private const int SetupLength = 8;

    /// <summary>The transfer; false with the reason where the packet is none.</summary>
    public static bool Read(ReadOnlySpan<byte> packet, out UsbTransfer transfer, out string defect)
    {
        transfer = default;
        defect = "";
        var head = packet.Length < Length ? Length : BinaryPrimitives.ReadUInt16LittleEndian(packet);
        if (packet.Length < head || head < Length || packet[22] > 3)
        {
            defect = packet.Length < head
                ? $"a USB packet of {packet.Length} bytes is shorter than its header of {head}"
                : $"a USB packet has a header of {head} bytes and the transfer type {packet[22]}";
            return false;
        }

        var type = (UsbTransferType)packet[22];
        var completion = (packet[16] & 1) != 0;
        var length = BinaryPrimitives.ReadUInt32LittleEndian(packet[23..]);
        var rest = packet[head..];
        var data = rest[..(int)Math.Min(length, rest.Length)];
        var isSetup = type == UsbTransferType.Control && !completion && data.Length >= SetupLength && head > Length && packet[Length] == 0;
        transfer = new UsbTransfer
        {
            Id = BinaryPrimitives.ReadUInt64LittleEndian(packet[2..]),
            Bus = BinaryPrimitives.ReadUInt16LittleEndian(packet[17..]),
            Device = BinaryPrimitives.ReadUInt16LittleEndian(packet[19..]),
            Endpoint = packet[21],
            Type = type,
            IsCompletion = completion,
            Succeeded = completion && BinaryPrimitives.ReadUInt32LittleEndian(packet[10..]) == 0,
            Setup = isSetup ? data[..SetupLength] : default,
            Data = isSetup ? data[SetupLength..] : data,
            CutShort = length > rest.Length,
        };
        return true;
    }
}
