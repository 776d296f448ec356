using System.Buffers.Binary;
using Tarry.Imports.PacketCapture.Files;
using Tarry.Imports.PacketCapture.Usb;

namespace Tarry.Imports.UsbWire;

/// <summary>Puts the packets of a cable together to transfers, as a host's driver would see them.</summary>
/// <remarks>
/// Universal Serial Bus Specification 2.0, 8.4 to 8.6 (from memory): a token, data, and the handshake of whoever took the data. Data without an ACK were not
/// taken and are sent again, so that they are no report. A control transfer is a SETUP, its data in packets, and an empty packet the other way.
/// </remarks>
/// <param name="transfers">Takes the transfers.</param>
/// <param name="defects">Takes what is wrong.</param>
/// <param name="nanoseconds">From units of the recording to nanoseconds.</param>
/// <param name="offset">The byte of the file that is read.</param>
internal sealed class UsbTransactions(UsbTransfers transfers, CaptureDefects defects, Func<long, long> nanoseconds, Func<long> offset)
{
    private const int SetupBytes = 8;
    // The length in a set-up packet has 16 bits.
    private const int LongestControl = 1 << 16;
    private readonly List<byte> control = [];
    private (int Identifier, int Address, int Endpoint)? token;
    private UsbPacket? data;
    private ulong controls;
    private (int Address, bool IsIn)? open;

    /// <summary>Packets that passed their checks.</summary>
    public long Packets { get; private set; }

    /// <summary>Polls of any device.</summary>
    public long Polls { get; private set; }

    public void Take(UsbPacket packet)
    {
        Packets++;
        switch (packet.Identifier)
        {
            case UsbPacketBits.In or UsbPacketBits.Out or UsbPacketBits.Setup:
                Drop();
                var content = BinaryPrimitives.ReadUInt16LittleEndian(packet.Content);
                token = (packet.Identifier, content & 0x7F, (content >> 7) & 0xF);
                Polls += packet.Identifier == UsbPacketBits.In ? 1 : 0;
                break;
            case UsbPacketBits.Data0 or UsbPacketBits.Data1 when token is not null && data is null:
                data = packet;
                break;
            case UsbPacketBits.Acknowledged when token is var (identifier, address, endpoint) && data is { } taken:
                Complete(identifier, address, endpoint, taken);
                (token, data) = (null, null);
                break;
            default:
                Drop();
                break;
        }
    }

    private void Drop()
    {
        if (data is not null && token?.Identifier == UsbPacketBits.In)
        {
            defects.Add(CaptureDefectKind.PacketMalformed, offset(), "a packet from the device was not acknowledged; it is not counted, since it is sent again");
        }

        (token, data) = (null, null);
    }

    private void Complete(int identifier, int address, int endpoint, UsbPacket packet)
    {
        switch (identifier)
        {
            case UsbPacketBits.Setup when packet.Content.Length == SetupBytes:
                controls++;
                control.Clear();
                open = (address, (packet.Content[0] & 0x80) != 0);
                transfers.Take(Control(address, packet.Content, [], completed: false), nanoseconds(packet.Start), offset());
                break;
            case UsbPacketBits.In when endpoint != 0:
                transfers.Take(
                    new UsbTransfer
                    {
                        Id = 0,
                        Bus = 1,
                        Device = address,
                        Endpoint = 0x80 | endpoint,
                        Type = UsbTransferType.Interrupt,
                        IsCompletion = true,
                        Succeeded = true,
                        Data = packet.Content,
                        CutShort = false,
                    },
                    nanoseconds(packet.Start),
                    offset());
                break;
            case UsbPacketBits.In or UsbPacketBits.Out when endpoint == 0 && open is var (opened, isIn) && opened == address:
                TakeStage(address, isIn, fromDevice: identifier == UsbPacketBits.In, packet);
                break;
        }
    }

    private void TakeStage(int address, bool isIn, bool fromDevice, UsbPacket packet)
    {
        if (isIn == fromDevice)
        {
            control.AddRange(packet.Content.AsSpan(0, Math.Min(packet.Content.Length, LongestControl - control.Count)));
            return;
        }

        open = null;
        transfers.Take(Control(address, [], isIn ? control.ToArray() : [], completed: true), nanoseconds(packet.Start), offset());
    }

    private UsbTransfer Control(int address, ReadOnlySpan<byte> setup, ReadOnlySpan<byte> content, bool completed) => new()
    {
        Id = controls,
        Bus = 1,
        Device = address,
        Endpoint = 0x80,
        Type = UsbTransferType.Control,
        IsCompletion = completed,
        Succeeded = true,
        Setup = setup,
        Data = content,
        CutShort = false,
    };
}
