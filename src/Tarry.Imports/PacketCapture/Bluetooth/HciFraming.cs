using System.Buffers.Binary;
using Tarry.Imports.PacketCapture.Files;

namespace Tarry.Imports.PacketCapture.Bluetooth;

/// <summary>Finds the HCI packet in what each link type puts around it.</summary>
/// <remarks>
/// LINKTYPE_BLUETOOTH_HCI_H4_WITH_PHDR (201): direction, then H4. LINKTYPE_BLUETOOTH_LINUX_MONITOR (254): adapter and opcode. btsnoop
/// 1001 and 1002: direction and kind in the flags, or H4; 2001: adapter and opcode in the flags (BlueZ, src/shared/btsnoop.h).
/// </remarks>
internal static class HciFraming
{
    private const int H4WithDirection = 201;
    private const int LinuxMonitor = 254;
    private const int SnoopH1 = 1001;
    private const int SnoopH4 = 1002;
    private const int SnoopMonitor = 2001;

    public static bool Reads(int linkType) => linkType is H4WithDirection or LinuxMonitor or SnoopH1 or SnoopH4 or SnoopMonitor;

    /// <summary>The HCI packet; false where the packet is none of the kinds that are read, with a defect where it is malformed.</summary>
    public static bool Read(in CapturedPacket packet, out HciPacket hci, out string? defect)
    {
        hci = default;
        defect = null;
        var data = packet.Data;
        switch (packet.LinkType)
        {
            case H4WithDirection when data.Length >= 5:
                return FromH4(data[4..], packet.Interface, BinaryPrimitives.ReadUInt32BigEndian(data) == 1, out hci);
            case SnoopH4 when data.Length >= 1:
                return FromH4(data, packet.Interface, (packet.Flags & 1) != 0, out hci);
            case LinuxMonitor when data.Length >= 4:
                return FromMonitor(data[4..], BinaryPrimitives.ReadUInt16BigEndian(data), BinaryPrimitives.ReadUInt16BigEndian(data[2..]), out hci);
            case SnoopMonitor:
                return FromMonitor(data, (int)(packet.Flags >> 16), (int)(packet.Flags & 0xFFFF), out hci);
            case SnoopH1:
                var received = (packet.Flags & 1) != 0;
                hci = new HciPacket
                {
                    Adapter = packet.Interface,
                    Type = (packet.Flags & 2) == 0 ? HciPacketType.Acl : received ? HciPacketType.Event : HciPacketType.Command,
                    IsReceived = received,
                    Data = data,
                };
                return true;
            default:
                defect = $"a Bluetooth packet of {data.Length} bytes is shorter than its header";
                return false;
        }
    }

    private static bool FromH4(ReadOnlySpan<byte> data, int adapter, bool received, out HciPacket hci)
    {
        hci = new HciPacket { Adapter = adapter, Type = (HciPacketType)data[0], IsReceived = received, Data = data[1..] };
        return hci.Type is HciPacketType.Command or HciPacketType.Acl or HciPacketType.Event;
    }

    private static bool FromMonitor(ReadOnlySpan<byte> data, int adapter, int opcode, out HciPacket hci)
    {
        var (type, received) = opcode switch
        {
            2 => (HciPacketType.Command, false),
            3 => (HciPacketType.Event, true),
            4 => (HciPacketType.Acl, false),
            5 => (HciPacketType.Acl, true),
            _ => (default, false),
        };
        hci = new HciPacket { Adapter = adapter, Type = type, IsReceived = received, Data = data };
        return type != default;
    }
}
