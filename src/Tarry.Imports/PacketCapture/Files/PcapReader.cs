using System.Buffers.Binary;

namespace Tarry.Imports.PacketCapture.Files;

/// <summary>Reads pcap: microseconds or nanoseconds, either byte order (IETF draft-ietf-opsawg-pcap).</summary>
internal sealed class PcapReader : CaptureReader
{
    private const int FileHead = 24;
    private const int RecordHead = 16;
    private readonly bool bigEndian;
    private readonly int nanosecondsInFraction;
    private readonly int linkType;
    private bool ended;

    public PcapReader(ByteWindow window)
        : base(window)
    {
        if (!Head(FileHead, "the pcap file header", out var head))
        {
            ended = true;
            return;
        }

        var magic = BinaryPrimitives.ReadUInt32LittleEndian(head);
        bigEndian = magic is not (CaptureMagic.PcapMicroseconds or CaptureMagic.PcapNanoseconds);
        nanosecondsInFraction = (bigEndian ? BinaryPrimitives.ReverseEndianness(magic) : magic) == CaptureMagic.PcapNanoseconds ? 1 : 1_000;
        // The upper bits say how long a frame check sequence is; the link type is the lower 16.
        linkType = (int)(UInt32(head[20..]) & 0xFFFF);
        var (major, minor) = (UInt16(head[4..]), UInt16(head[6..]));
        if (major != 2)
        {
            Defects.Add(CaptureDefectKind.VersionUnknown, 0, $"the file is of pcap version {major}.{minor}, and 2.4 is read");
            ended = true;
        }

        Window.Advance(FileHead);
    }

    public override bool Read(out CapturedPacket packet)
    {
        packet = default;
        while (!ended)
        {
            if (!Head(RecordHead, "a packet header", out var head))
            {
                ended = true;
                break;
            }

            var captured = UInt32(head[8..]);
            if (captured > LongestBlock)
            {
                Defects.Add(CaptureDefectKind.LengthOutOfRange, Offset, $"a packet of {captured} bytes is longer than any that is captured");
                ended = true;
                break;
            }

            if (!Whole(RecordHead + (int)captured, "a packet", out var record))
            {
                ended = true;
                break;
            }

            var offset = Offset;
            Window.Advance(record.Length);
            Packets++;
            var fraction = UInt32(record[4..]);
            if (fraction >= 1_000_000_000 / nanosecondsInFraction)
            {
                Defects.Add(CaptureDefectKind.TimeOutOfRange, offset, $"the fraction {fraction} of a second is a second or more");
                continue;
            }

            packet = new CapturedPacket
            {
                Offset = offset,
                LinkType = linkType,
                BigEndian = bigEndian,
                TimeNanoseconds = (UInt32(record) * 1_000_000_000L) + (fraction * (long)nanosecondsInFraction),
                Interface = 0,
                OriginalLength = UInt32(record[12..]),
                Data = record[RecordHead..],
            };
            return true;
        }

        return false;
    }

    private uint UInt32(ReadOnlySpan<byte> at) => bigEndian ? BinaryPrimitives.ReadUInt32BigEndian(at) : BinaryPrimitives.ReadUInt32LittleEndian(at);

    private int UInt16(ReadOnlySpan<byte> at) => bigEndian ? BinaryPrimitives.ReadUInt16BigEndian(at) : BinaryPrimitives.ReadUInt16LittleEndian(at);
}
