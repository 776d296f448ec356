using Tarry.Metrology;

namespace Tarry.Imports.Tests.PacketCapture;

/// <summary>What hosts would capture of invented devices: enumeration or connection, then reports.</summary>
internal static class SampleCaptures
{
    public const long Start = 1_700_000_000_000_000_000;

    /// <summary>Enumeration of a USB device with one HID interface, then reports, one every so many nanoseconds.</summary>
    public static List<SamplePacket> Usb(
        byte[] descriptor, IReadOnlyList<byte[]> reports, int device = 5, int interval = 8, int controlPacket = 8, int maxPacket = 8, int driverInterval = 8,
        long slot = 8_000_000, long start = Start, bool mapped = true, bool bigEndian = false)
    {
        var packets = new List<SamplePacket>();
        ulong id = 0xFFFF880000000100;
        Control([0x80, 6, 0, 1, 0, 0, 18, 0], SampleDescriptors.Device(controlPacket, 0x0100 + device));
        var configuration = SampleDescriptors.Configuration(descriptor.Length, 0x81, maxPacket, interval);
        Control([0x80, 6, 0, 2, 0, 0, 9, 0], configuration[..9]);
        Control([0x80, 6, 0, 2, 0, 0, (byte)configuration.Length, 0], configuration);
        Control([0x00, 9, 1, 0, 0, 0, 0, 0], []);
        Control([0x81, 6, 0, 0x22, 0, 0, (byte)descriptor.Length, (byte)(descriptor.Length >> 8)], descriptor);
        for (var index = 0; index < reports.Count; index++)
        {
            var at = start + 100_000_000 + (index * slot);
            packets.Add(new(at - 50_000, Packet('S', 1, 0x81, ++id, [], status: -115, length: maxPacket)));
            packets.Add(new(at, Packet('C', 1, 0x81, id, reports[index])));
        }

        return packets;

        void Control(byte[] setup, byte[] answer)
        {
            var at = start + (packets.Count * 500_000L);
            var endpoint = setup[0] >= 0x80 ? 0x80 : 0;
            packets.Add(new(at, Packet('S', 2, endpoint, ++id, [], setup, -115, setup[6] | (setup[7] << 8))));
            packets.Add(new(at + 200_000, Packet('C', 2, endpoint, id, answer)));
        }

        byte[] Packet(char type, int transfer, int endpoint, ulong ofId, byte[] data, byte[]? setup = null, int status = 0, int length = -1) =>
            SamplePackets.UsbMon(type, transfer, endpoint, device, 3, ofId, data, setup, status, transfer == 1 ? driverInterval : 0, length, mapped, bigEndian);
    }

    /// <summary>The same as USBPcap on Windows captures it.</summary>
    public static List<SamplePacket> UsbPcap(byte[] descriptor, IReadOnlyList<byte[]> reports, int interval = 4, long slot = 4_000_000)
    {
        var packets = new List<SamplePacket>();
        ulong id = 0xFFFFA40000000100;
        Control([0x80, 6, 0, 1, 0, 0, 18, 0], SampleDescriptors.Device(64, 0x0200));
        var configuration = SampleDescriptors.Configuration(descriptor.Length, 0x81, 16, interval);
        Control([0x80, 6, 0, 2, 0, 0, (byte)configuration.Length, 0], configuration);
        Control([0x81, 6, 0, 0x22, 0, 0, (byte)descriptor.Length, (byte)(descriptor.Length >> 8)], descriptor);
        for (var index = 0; index < reports.Count; index++)
        {
            packets.Add(new(Start + 100_000_000 + (index * slot), SamplePackets.UsbPcap(true, 1, 0x81, 7, 1, ++id, reports[index])));
        }

        return packets;

        void Control(byte[] setup, byte[] answer)
        {
            var at = Start + (packets.Count * 500_000L);
            packets.Add(new(at, SamplePackets.UsbPcap(false, 2, 0x80, 7, 1, ++id, setup, stage: 0)));
            packets.Add(new(at + 200_000, SamplePackets.UsbPcap(true, 2, 0x80, 7, 1, id, answer, stage: 3)));
        }
    }

    /// <summary>A classic Bluetooth connection with its HID channels and service records, in H4 with flags; reports come in fragments of so many bytes.</summary>
    public static List<SamplePacket> Classic(byte[] descriptor, IReadOnlyList<byte[]> reports, int fragment = 1_000, long slot = 11_250_000)
    {
        const int Handle = 0x0B;
        var packets = new List<SamplePacket>();
        Event([0x03, 11, 0, Handle, 0, 0x11, 0x22, 0x33, 0x44, 0x55, 0x66, 1, 0]);
        // Service discovery: the host asks; its channel is 0x40, the device's 0x50.
        Connect(1, byHost: true, psm: 1, source: 0x40, destination: 0x50);
        byte[] list = [0x09, 0x02, 0x06, 0x36, .. Big16(descriptor.Length + 8), 0x36, .. Big16(descriptor.Length + 5), 0x08, 0x22, 0x26, .. Big16(descriptor.Length), .. descriptor];
        byte[] attributes = [0x36, .. Big16(list.Length + 3), 0x36, .. Big16(list.Length), .. list];
        Frame(true, 0x40, [0x07, 0, 1, .. Big16(attributes.Length + 3), .. Big16(attributes.Length), .. attributes, 0]);
        Connect(2, byHost: true, psm: 0x11, source: 0x41, destination: 0x51);
        Connect(3, byHost: true, psm: 0x13, source: 0x42, destination: 0x52);
        for (var index = 0; index < reports.Count; index++)
        {
            var at = Start + 200_000_000 + (index * slot);
            Frame(true, 0x42, [0xA1, .. reports[index]], at);
        }

        return packets;

        void Connect(byte identifier, bool byHost, int psm, int source, int destination)
        {
            Frame(!byHost, 1, [2, identifier, 4, 0, .. Little16(psm), .. Little16(source)]);
            Frame(byHost, 1, [3, identifier, 8, 0, .. Little16(destination), .. Little16(source), 0, 0, 0, 0]);
        }

        void Event(byte[] data) => packets.Add(new(Start + (packets.Count * 1_000_000L), [4, .. data], 3));

        void Frame(bool received, int channel, byte[] payload, long? at = null)
        {
            var frame = SamplePackets.L2cap(channel, payload);
            for (var from = 0; from < frame.Length; from += fragment)
            {
                var part = frame.AsSpan(from, Math.Min(fragment, frame.Length - from));
                packets.Add(new((at ?? Start + (packets.Count * 1_000_000L)) + from, [2, .. SamplePackets.Acl(Handle, from == 0 ? 2 : 1, part)], received ? 1u : 0));
            }
        }
    }

    /// <summary>An LE connection at 7.5 ms with discovery, report map and reports by notification, in H4 with flags.</summary>
    public static List<SamplePacket> LowEnergy(byte[] descriptor, int reportId, IReadOnlyList<byte[]> reports, long slot = 7_500_000)
    {
        const int Handle = 0x40;
        var packets = new List<SamplePacket>();
        packets.Add(new(Start, [4, 0x3E, 19, 0x01, 0, Handle, 0, 0, 0, 0x21, 0x22, 0x33, 0x44, 0x55, 0x66, 6, 0, 0, 0, 0x2A, 0, 0], 3));
        Exchange([0x10, 1, 0, 0xFF, 0xFF, 0x00, 0x28], [0x11, 6, 0x10, 0, 0x1F, 0, 0x12, 0x18]);
        Exchange([0x08, 0x10, 0, 0x1F, 0, 0x03, 0x28], [0x09, 7, 0x11, 0, 2, 0x12, 0, 0x4B, 0x2A, 0x13, 0, 0x12, 0x14, 0, 0x4D, 0x2A]);
        Exchange([0x04, 0x15, 0, 0x1F, 0], [0x05, 1, 0x15, 0, 0x02, 0x29, 0x16, 0, 0x08, 0x29]);
        Exchange([0x0A, 0x16, 0], [0x0B, (byte)reportId, 1]);
        Exchange([0x0A, 0x12, 0], [0x0B, .. descriptor.AsSpan(0, Math.Min(22, descriptor.Length))]);
        for (var offset = 22; offset <= descriptor.Length; offset += 22)
        {
            Exchange([0x0C, 0x12, 0, .. Little16(offset)], [0x0D, .. descriptor.AsSpan(offset, Math.Min(22, descriptor.Length - offset))]);
        }

        for (var index = 0; index < reports.Count; index++)
        {
            Frame(true, [0x1B, 0x14, 0, .. reports[index]], Start + 200_000_000 + (index * slot));
        }

        return packets;

        void Exchange(byte[] request, byte[] response)
        {
            Frame(false, request);
            Frame(true, response);
        }

        void Frame(bool received, byte[] pdu, long? at = null) => packets.Add(new(
            at ?? Start + (packets.Count * 1_000_000L),
            [2, .. SamplePackets.Acl(Handle, received ? 2 : 0, SamplePackets.L2cap(4, pdu))],
            received ? 1u : 0));
    }

    /// <summary>Reports of random bits; for a descriptor with an id, that id first.</summary>
    public static List<byte[]> Reports(ulong seed, int count, int bytes, int? reportId = null)
    {
        var generator = new SeededGenerator(seed);
        var reports = new List<byte[]>();
        for (var index = 0; index < count; index++)
        {
            var report = new byte[bytes];
            for (var at = 0; at < bytes; at++)
            {
                report[at] = (byte)generator.NextInt32(256);
            }

            if (reportId is { } id)
            {
                report[0] = (byte)id;
            }

            reports.Add(report);
        }

        return reports;
    }

    private static byte[] Big16(int value) => [(byte)(value >> 8), (byte)value];

    private static byte[] Little16(int value) => [(byte)value, (byte)(value >> 8)];
}
