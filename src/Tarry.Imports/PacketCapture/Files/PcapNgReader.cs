using System.Buffers.Binary;

namespace Tarry.Imports.PacketCapture.Files;

/// <summary>
/// Reads pcapng (IETF draft-ietf-opsawg-pcapng): sections of either byte order, several interfaces, enhanced, simple and obsolete
/// packet blocks; blocks of any other type are passed over.
/// </summary>
internal sealed class PcapNgReader(ByteWindow window) : CaptureReader(window)
{
    private const uint InterfaceDescription = 1;
    private const uint ObsoletePacket = 2;
    private const uint SimplePacket = 3;
    private const uint EnhancedPacket = 6;
    private const uint ByteOrderMagic = 0x1A2B3C4D;
    private const int BlockFrame = 12;

    // A file of nothing but interface descriptions would otherwise grow without bound.
    private const int MostInterfaces = 65_536;
    private readonly List<PcapNgInterface> interfaces = [];
    private int interfacesBefore;
    private bool bigEndian;
    private bool ended;

    public override bool Read(out CapturedPacket packet)
    {
        packet = default;
        while (!ended && NextBlock(out var type, out var body, out var offset))
        {
            switch (type)
            {
                case InterfaceDescription:
                    AddInterface(body, offset);
                    break;
                case EnhancedPacket or ObsoletePacket when TakePacket(type, body, offset, out packet):
                    return true;
                case SimplePacket:
                    Packets++;
                    Defects.Add(CaptureDefectKind.TimeOutOfRange, offset, "a simple packet block has no time");
                    break;
            }
        }

        return false;
    }

    /// <summary>The next block but section headers, which change how all that follows is read.</summary>
    private bool NextBlock(out uint type, out ReadOnlySpan<byte> body, out long offset)
    {
        (type, offset) = (0, Offset);
        body = default;
        if (!Head(BlockFrame, "a block", out var head))
        {
            return End();
        }

        type = UInt32(head);
        if (type == CaptureMagic.SectionHeader && !BeginSection(head[8..]))
        {
            return End();
        }

        var length = UInt32(head[4..]);
        if (length < BlockFrame || length % 4 != 0)
        {
            Defects.Add(CaptureDefectKind.LengthOutOfRange, Offset, $"a block of {length} bytes cannot be: it is 12 or more, in fours");
            return End();
        }

        // Blocks that nothing is read from may be long; they are passed over without being held.
        if (length > LongestBlock)
        {
            if (type is EnhancedPacket or ObsoletePacket or SimplePacket or InterfaceDescription or CaptureMagic.SectionHeader)
            {
                Defects.Add(CaptureDefectKind.LengthOutOfRange, Offset, $"a block of {length} bytes is longer than any packet that is captured");
                return End();
            }

            if (!Window.Skip(length))
            {
                Defects.Add(CaptureDefectKind.CutOff, offset, $"the file ends within a block of {length} bytes");
                return End();
            }

            return true;
        }

        if (!Whole((int)length, "a block", out var block))
        {
            return End();
        }

        if (UInt32(block[^4..]) != length)
        {
            Defects.Add(CaptureDefectKind.LengthsDisagree, Offset, $"a block says {length} bytes at its beginning and {UInt32(block[^4..])} at its end");
            return End();
        }

        Window.Advance(block.Length);
        body = block[8..^4];
        return true;
    }

    private bool End()
    {
        ended = true;
        return false;
    }

    private bool BeginSection(ReadOnlySpan<byte> magic)
    {
        switch (BinaryPrimitives.ReadUInt32LittleEndian(magic))
        {
            case ByteOrderMagic:
                bigEndian = false;
                break;
            case 0x4D3C2B1A:
                bigEndian = true;
                break;
            default:
                Defects.Add(CaptureDefectKind.ByteOrderUnknown, Offset, "a section does not say its byte order");
                return false;
        }

        var version = Window.Peek(16);
        if (version.Length == 16 && UInt16(version[12..]) != 1)
        {
            Defects.Add(CaptureDefectKind.VersionUnknown, Offset, $"a section is of pcapng version {UInt16(version[12..])}.{UInt16(version[14..])}, and 1 is read");
            return false;
        }

        interfacesBefore += interfaces.Count;
        interfaces.Clear();
        return true;
    }

    private void AddInterface(ReadOnlySpan<byte> body, long offset)
    {
        if (body.Length < 8 || interfaces.Count >= MostInterfaces)
        {
            Defects.Add(CaptureDefectKind.PacketMalformed, offset, body.Length < 8 ? "an interface description is too short" : "there are too many interfaces");
            return;
        }

        interfaces.Add(new PcapNgInterface(interfacesBefore + interfaces.Count, UInt16(body), UInt32(body[4..]), Scale(body[8..])));
    }

    private TimestampScale Scale(ReadOnlySpan<byte> options)
    {
        var scale = TimestampScale.Microseconds;
        while (options.Length >= 4)
        {
            var (code, length) = (UInt16(options), UInt16(options[2..]));
            if (code == 0 || length > options.Length - 4)
            {
                break;
            }

            var value = options.Slice(4, length);
            switch (code)
            {
                case 9 when length >= 1:
                    scale = scale with { Power = value[0] & 0x7F, Binary = value[0] >= 0x80 };
                    break;
                case 14 when length >= 8:
                    scale = scale with { OffsetSeconds = bigEndian ? BinaryPrimitives.ReadInt64BigEndian(value) : BinaryPrimitives.ReadInt64LittleEndian(value) };
                    break;
            }

            options = options[Math.Min(options.Length, 4 + ((length + 3) & ~3))..];
        }

        return scale;
    }

    private bool TakePacket(uint type, ReadOnlySpan<byte> body, long offset, out CapturedPacket packet)
    {
        packet = default;
        Packets++;
        if (body.Length < 20 || UInt32(body[12..]) > body.Length - 20)
        {
            Defects.Add(CaptureDefectKind.PacketMalformed, offset, "a packet block is shorter than the packet that it holds");
            return false;
        }

        // The obsolete block keeps two bytes of the number for a count of drops.
        var number = type == EnhancedPacket ? UInt32(body) : (uint)UInt16(body);
        if (number >= interfaces.Count)
        {
            Defects.Add(CaptureDefectKind.InterfaceUnknown, offset, $"a packet is of interface {number}, and the section describes {interfaces.Count}");
            return false;
        }

        var from = interfaces[(int)number];
        var ticks = ((ulong)UInt32(body[4..]) << 32) | UInt32(body[8..]);
        if (from.Scale.Nanoseconds(ticks) is not { } time)
        {
            Defects.Add(CaptureDefectKind.TimeOutOfRange, offset, $"the time {ticks} cannot be one");
            return false;
        }

        RoundedToNanoseconds |= from.Scale is { Binary: true, Power: > 0 } or { Power: > 9 };
        packet = new CapturedPacket
        {
            Offset = offset,
            LinkType = from.LinkType,
            BigEndian = bigEndian,
            TimeNanoseconds = time,
            Interface = from.Number,
            OriginalLength = UInt32(body[16..]),
            Data = body.Slice(20, (int)UInt32(body[12..])),
        };
        return true;
    }

    private uint UInt32(ReadOnlySpan<byte> at) => bigEndian ? BinaryPrimitives.ReadUInt32BigEndian(at) : BinaryPrimitives.ReadUInt32LittleEndian(at);

    private int UInt16(ReadOnlySpan<byte> at) => bigEndian ? BinaryPrimitives.ReadUInt16BigEndian(at) : BinaryPrimitives.ReadUInt16LittleEndian(at);
}
