using System.Buffers.Binary;

namespace Tarry.Imports.Tests.PacketCapture;

/// <summary>A packet of a capture that a test makes: when, and its bytes; for btsnoop its flags.</summary>
internal sealed record SamplePacket(long TimeNanoseconds, byte[] Data, uint Flags = 0);

/// <summary>Packets as hosts capture them, made from the layouts that the link types publish.</summary>
internal static class SamplePackets
{
    public static byte[] UsbMon(
        char type, int transferType, int endpoint, int device, int bus, ulong id, ReadOnlySpan<byte> data, ReadOnlySpan<byte> setup = default,
        int status = 0, int interval = 0, int length = -1, bool mapped = true, bool bigEndian = false)
    {
        var head = mapped ? 64 : 48;
        var packet = new byte[head + data.Length];
        Write64(packet, id, bigEndian);
        packet[8] = (byte)type;
        packet[9] = (byte)transferType;
        packet[10] = (byte)endpoint;
        packet[11] = (byte)device;
        Write16(packet.AsSpan(12), bus, bigEndian);
        packet[14] = setup.IsEmpty ? (byte)'-' : (byte)0;
        packet[15] = data.IsEmpty ? (byte)'<' : (byte)0;
        Write32(packet.AsSpan(28), (uint)status, bigEndian);
        Write32(packet.AsSpan(32), (uint)(length < 0 ? data.Length : length), bigEndian);
        Write32(packet.AsSpan(36), (uint)data.Length, bigEndian);
        setup.CopyTo(packet.AsSpan(40));
        if (mapped)
        {
            Write32(packet.AsSpan(48), (uint)interval, bigEndian);
        }

        data.CopyTo(packet.AsSpan(head));
        return packet;
    }

    /// <summary>USBPcap: 27 bytes, and for a control transfer its stage.</summary>
    public static byte[] UsbPcap(bool completion, int transferType, int endpoint, int device, int bus, ulong id, ReadOnlySpan<byte> data, int stage = -1)
    {
        var head = stage >= 0 ? 28 : 27;
        var packet = new byte[head + data.Length];
        Write16(packet, head, false);
        Write64(packet.AsSpan(2), id, false);
        Write16(packet.AsSpan(14), 9, false);
        packet[16] = completion ? (byte)1 : (byte)0;
        Write16(packet.AsSpan(17), bus, false);
        Write16(packet.AsSpan(19), device, false);
        packet[21] = (byte)endpoint;
        packet[22] = (byte)transferType;
        Write32(packet.AsSpan(23), (uint)data.Length, false);
        if (stage >= 0)
        {
            packet[27] = (byte)stage;
        }

        data.CopyTo(packet.AsSpan(head));
        return packet;
    }

    /// <summary>An ACL packet, without what a link type puts before it.</summary>
    public static byte[] Acl(int handle, int boundary, ReadOnlySpan<byte> data)
    {
        var packet = new byte[4 + data.Length];
        Write16(packet, handle | (boundary << 12), false);
        Write16(packet.AsSpan(2), data.Length, false);
        data.CopyTo(packet.AsSpan(4));
        return packet;
    }

    public static byte[] L2cap(int channel, ReadOnlySpan<byte> payload)
    {
        var frame = new byte[4 + payload.Length];
        Write16(frame, payload.Length, false);
        Write16(frame.AsSpan(2), channel, false);
        payload.CopyTo(frame.AsSpan(4));
        return frame;
    }

    public static void Write16(Span<byte> to, int value, bool bigEndian)
    {
        if (bigEndian)
        {
            BinaryPrimitives.WriteUInt16BigEndian(to, (ushort)value);
        }
        else
        {
            BinaryPrimitives.WriteUInt16LittleEndian(to, (ushort)value);
        }
    }

    public static void Write32(Span<byte> to, uint value, bool bigEndian)
    {
        if (bigEndian)
        {
            BinaryPrimitives.WriteUInt32BigEndian(to, value);
        }
        else
        {
            BinaryPrimitives.WriteUInt32LittleEndian(to, value);
        }
    }

    public static void Write64(Span<byte> to, ulong value, bool bigEndian)
    {
        if (bigEndian)
        {
            BinaryPrimitives.WriteUInt64BigEndian(to, value);
        }
        else
        {
            BinaryPrimitives.WriteUInt64LittleEndian(to, value);
        }
    }
}
