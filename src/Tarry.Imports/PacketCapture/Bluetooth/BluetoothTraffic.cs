using System.Buffers.Binary;
using Tarry.Imports.PacketCapture.Files;
using Tarry.Studies.Reports;

namespace Tarry.Imports.PacketCapture.Bluetooth;

/// <summary>Follows the connections of all Bluetooth adapters in a capture.</summary>
internal sealed class BluetoothTraffic(CaptureDefects defects)
{
    private const int SignallingChannel = 1;
    private const int AttributeChannel = 4;
    private const int FirstDynamicChannel = 0x40;
    private const int MostLinks = 4_096;
    private readonly List<BluetoothDevice> devices = [];
    private readonly Dictionary<(int Adapter, int Handle), BluetoothLink> links = [];
    private readonly Dictionary<(int Adapter, ulong Address, bool LowEnergy), BluetoothDevice> byAddress = [];

    /// <summary>The devices, in the order in which they appeared.</summary>
    public IReadOnlyList<BluetoothDevice> Devices => devices;

    public void Take(in CapturedPacket packet)
    {
        if (!HciFraming.Read(packet, out var hci, out var defect))
        {
            if (defect is not null)
            {
                defects.Add(CaptureDefectKind.PacketMalformed, packet.Offset, defect);
            }
        }
        else if (hci.Type == HciPacketType.Event)
        {
            TakeEvent(hci);
        }
        else if (hci.Type == HciPacketType.Acl)
        {
            TakeAcl(hci, packet);
        }
    }

    private void TakeEvent(HciPacket hci)
    {
        var data = hci.Data;
        switch (data)
        {
            // Connection complete: status, handle, address.
            case [0x03, _, 0, ..] when data.Length >= 11:
                Connect(hci.Adapter, UInt16(data[3..]), data.Slice(5, 6), lowEnergy: false);
                break;
            // Disconnection complete.
            case [0x05, _, 0, ..] when data.Length >= 5:
                links.Remove((hci.Adapter, UInt16(data[3..]) & 0xFFF));
                break;
            // LE connection complete, and its enhanced form with two more addresses.
            case [0x3E, _, 0x01, 0, ..] when data.Length >= 16:
                Connect(hci.Adapter, UInt16(data[4..]), data.Slice(8, 6), lowEnergy: true).TakeConnectionInterval(UInt16(data[14..]));
                break;
            case [0x3E, _, 0x0A or 0x29, 0, ..] when data.Length >= 28:
                Connect(hci.Adapter, UInt16(data[4..]), data.Slice(8, 6), lowEnergy: true).TakeConnectionInterval(UInt16(data[26..]));
                break;
            // LE connection update complete.
            case [0x3E, _, 0x03, 0, ..] when data.Length >= 8:
                Link(hci.Adapter, UInt16(data[4..])).Device.TakeConnectionInterval(UInt16(data[6..]));
                break;
        }
    }

    private void TakeAcl(HciPacket hci, in CapturedPacket packet)
    {
        var data = hci.Data;
        if (data.Length < 4)
        {
            defects.Add(CaptureDefectKind.PacketMalformed, packet.Offset, $"an ACL packet of {data.Length} bytes is shorter than its header");
            return;
        }

        var length = UInt16(data[2..]);
        if (length > data.Length - 4)
        {
            defects.Add(
                packet.OriginalLength > packet.Data.Length ? CaptureDefectKind.PacketCutShort : CaptureDefectKind.PacketMalformed,
                packet.Offset,
                $"an ACL packet says {length} bytes, and {data.Length - 4} are there");
            return;
        }

        var link = Link(hci.Adapter, UInt16(data));
        var assembly = hci.IsReceived ? link.Received : link.Sent;
        if (assembly.Take((data[1] >> 4) & 3, data.Slice(4, length), out var frame) is { } defect)
        {
            defects.Add(CaptureDefectKind.FragmentsBroken, packet.Offset, defect);
        }

        if (!frame.IsEmpty)
        {
            TakeFrame(link, UInt16(frame[2..]), frame[4..], hci.IsReceived, packet);
        }
    }

    private static void TakeFrame(BluetoothLink link, int channel, ReadOnlySpan<byte> payload, bool received, in CapturedPacket packet)
    {
        switch (channel)
        {
            case SignallingChannel:
                link.Channels.TakeSignal(payload, received);
                break;
            case AttributeChannel when payload.Length > 0:
                TakeAttribute(link.Device, payload, received, packet);
                break;
            case >= FirstDynamicChannel when received && payload.Length > 0:
                TakeDynamic(link, channel, payload, packet);
                break;
        }
    }

    private static void TakeDynamic(BluetoothLink link, int channel, ReadOnlySpan<byte> payload, in CapturedPacket packet)
    {
        // DATA with an input report (Bluetooth HID profile, 3.1).
        const byte InputReport = 0xA1;
        switch (link.Channels.ServiceOf(channel))
        {
            case L2capChannels.ServiceDiscovery:
                link.Device.Services.Take(payload);
                break;
            case L2capChannels.HidInterrupt or null when payload[0] == InputReport && payload.Length <= ReportLog.LongestReport:
                link.Device.TakeHid(channel, link.Channels.ServiceOf(channel) is null, payload[1..], packet.TimeNanoseconds);
                break;
        }
    }

    private static void TakeAttribute(BluetoothDevice device, ReadOnlySpan<byte> pdu, bool received, in CapturedPacket packet)
    {
        const int Notification = 0x1B;
        const int Indication = 0x1D;
        const int SeveralNotifications = 0x23;
        switch (pdu[0])
        {
            case Notification or Indication when received && pdu.Length is >= 3 and <= ReportLog.LongestReport:
                device.TakeNotification(UInt16(pdu[1..]), pdu[3..], packet.TimeNanoseconds);
                break;
            case SeveralNotifications when received:
                for (var rest = pdu[1..]; rest.Length >= 4 && UInt16(rest[2..]) <= rest.Length - 4; rest = rest[(4 + UInt16(rest[2..]))..])
                {
                    if (UInt16(rest[2..]) <= ReportLog.LongestReport)
                    {
                        device.TakeNotification(UInt16(rest), rest.Slice(4, UInt16(rest[2..])), packet.TimeNanoseconds);
                    }
                }

                break;
            default:
                if (received)
                {
                    device.Attributes.TakeResponse(pdu);
                }
                else
                {
                    device.Attributes.TakeRequest(pdu);
                }

                break;
        }
    }

    private BluetoothDevice Connect(int adapter, int handle, ReadOnlySpan<byte> address, bool lowEnergy)
    {
        var key = (adapter, BinaryPrimitives.ReadUInt32LittleEndian(address) | ((ulong)UInt16(address[4..]) << 32), lowEnergy);
        if (!byAddress.TryGetValue(key, out var device))
        {
            device = NewDevice(adapter);
            if (byAddress.Count < MostLinks)
            {
                byAddress.Add(key, device);
            }
        }

        SetLink(adapter, handle & 0xFFF, new BluetoothLink(device));
        return device;
    }

    private BluetoothLink Link(int adapter, int handleAndFlags)
    {
        var handle = handleAndFlags & 0xFFF;
        return links.TryGetValue((adapter, handle), out var link)
            ? link
            : SetLink(adapter, handle, new BluetoothLink(NewDevice(adapter)));
    }

    private BluetoothLink SetLink(int adapter, int handle, BluetoothLink link)
    {
        if (links.Count < MostLinks || links.ContainsKey((adapter, handle)))
        {
            links[(adapter, handle)] = link;
        }

        return link;
    }

    private BluetoothDevice NewDevice(int adapter)
    {
        var device = new BluetoothDevice(adapter, devices.Count + 1);
        if (devices.Count < MostLinks)
        {
            devices.Add(device);
        }

        return device;
    }

    private static int UInt16(ReadOnlySpan<byte> at) => BinaryPrimitives.ReadUInt16LittleEndian(at);
}
