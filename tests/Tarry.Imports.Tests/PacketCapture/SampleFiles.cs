using System.Buffers.Binary;

namespace Tarry.Imports.Tests.PacketCapture;

/// <summary>Capture files that a test makes, by the published layouts of the formats.</summary>
internal static class SampleFiles
{
    public static byte[] Pcap(int linkType, IEnumerable<SamplePacket> packets, bool nanoseconds = false, bool bigEndian = false)
    {
        using var file = new MemoryStream();
        var head = new byte[24];
        SamplePackets.Write32(head, nanoseconds ? 0xA1B23C4D : 0xA1B2C3D4, bigEndian);
        SamplePackets.Write16(head.AsSpan(4), 2, bigEndian);
        SamplePackets.Write16(head.AsSpan(6), 4, bigEndian);
        SamplePackets.Write32(head.AsSpan(16), 262_144, bigEndian);
        SamplePackets.Write32(head.AsSpan(20), (uint)linkType, bigEndian);
        file.Write(head);
        foreach (var packet in packets)
        {
            var record = new byte[16];
            var fraction = packet.TimeNanoseconds % 1_000_000_000;
            SamplePackets.Write32(record, (uint)(packet.TimeNanoseconds / 1_000_000_000), bigEndian);
            SamplePackets.Write32(record.AsSpan(4), (uint)(nanoseconds ? fraction : fraction / 1_000), bigEndian);
            SamplePackets.Write32(record.AsSpan(8), (uint)packet.Data.Length, bigEndian);
            SamplePackets.Write32(record.AsSpan(12), (uint)packet.Data.Length, bigEndian);
            file.Write(record);
            file.Write(packet.Data);
        }

        return file.ToArray();
    }

    /// <summary>One section with one interface whose times are in nanoseconds.</summary>
    public static byte[] PcapNg(int linkType, IEnumerable<SamplePacket> packets, bool bigEndian = false)
    {
        using var file = new MemoryStream();
        file.Write(Section(bigEndian));
        file.Write(Interface(linkType, bigEndian, (9, [9])));
        foreach (var packet in packets)
        {
            file.Write(Packet(0, (ulong)packet.TimeNanoseconds, packet.Data, bigEndian));
        }

        return file.ToArray();
    }

    public static byte[] Section(bool bigEndian = false)
    {
        var body = new byte[16];
        SamplePackets.Write32(body, 0x1A2B3C4D, bigEndian);
        SamplePackets.Write16(body.AsSpan(4), 1, bigEndian);
        SamplePackets.Write64(body.AsSpan(8), ulong.MaxValue, bigEndian);
        return Block(0x0A0D0D0A, body, bigEndian);
    }

    public static byte[] Interface(int linkType, bool bigEndian, params (int Code, byte[] Value)[] options)
    {
        using var body = new MemoryStream();
        var head = new byte[8];
        SamplePackets.Write16(head, linkType, bigEndian);
        body.Write(head);
        foreach (var (code, value) in options)
        {
            var option = new byte[4 + ((value.Length + 3) & ~3)];
            SamplePackets.Write16(option, code, bigEndian);
            SamplePackets.Write16(option.AsSpan(2), value.Length, bigEndian);
            value.CopyTo(option, 4);
            body.Write(option);
        }

        body.Write(new byte[4]);
        return Block(1, body.ToArray(), bigEndian);
    }

    public static byte[] Packet(uint number, ulong ticks, byte[] data, bool bigEndian = false)
    {
        var body = new byte[20 + ((data.Length + 3) & ~3)];
        SamplePackets.Write32(body, number, bigEndian);
        SamplePackets.Write32(body.AsSpan(4), (uint)(ticks >> 32), bigEndian);
        SamplePackets.Write32(body.AsSpan(8), (uint)ticks, bigEndian);
        SamplePackets.Write32(body.AsSpan(12), (uint)data.Length, bigEndian);
        SamplePackets.Write32(body.AsSpan(16), (uint)data.Length, bigEndian);
        data.CopyTo(body, 20);
        return Block(6, body, bigEndian);
    }

    public static byte[] Block(uint type, byte[] body, bool bigEndian = false)
    {
        var block = new byte[12 + body.Length];
        SamplePackets.Write32(block, type, bigEndian);
        SamplePackets.Write32(block.AsSpan(4), (uint)block.Length, bigEndian);
        body.CopyTo(block, 8);
        SamplePackets.Write32(block.AsSpan(block.Length - 4), (uint)block.Length, bigEndian);
        return block;
    }

    public static byte[] BtSnoop(int datalink, IEnumerable<SamplePacket> packets)
    {
        using var file = new MemoryStream();
        var head = new byte[16];
        "btsnoop\0"u8.CopyTo(head);
        BinaryPrimitives.WriteUInt32BigEndian(head.AsSpan(8), 1);
        BinaryPrimitives.WriteUInt32BigEndian(head.AsSpan(12), (uint)datalink);
        file.Write(head);
        foreach (var packet in packets)
        {
            var record = new byte[24];
            BinaryPrimitives.WriteUInt32BigEndian(record, (uint)packet.Data.Length);
            BinaryPrimitives.WriteUInt32BigEndian(record.AsSpan(4), (uint)packet.Data.Length);
            BinaryPrimitives.WriteUInt32BigEndian(record.AsSpan(8), packet.Flags);
            BinaryPrimitives.WriteInt64BigEndian(record.AsSpan(16), (packet.TimeNanoseconds / 1_000) + 0x00dcddb30f2f8000);
            file.Write(record);
            file.Write(packet.Data);
        }

        return file.ToArray();
    }
}
