using System.Buffers.Binary;

namespace Tarry.Imports.PacketCapture.Files;

/// <summary>Reads btsnoop version 1: big-endian, microseconds since the year 0 (as BlueZ's <c>src/shared/btsnoop.c</c> has it).</summary>
internal sealed class BtSnoopReader : CaptureReader
{
    private const int FileHead = 16;
    private const int RecordHead = 24;
    private const long MicrosecondsFromYear0To1970 = 0x00dcddb30f2f8000;
    private readonly int datalink;
    private bool ended;

    public BtSnoopReader(ByteWindow window)
        : base(window)
    {
        if (!Head(FileHead, "the btsnoop file header", out var head))
        {
            ended = true;
            return;
        }

        datalink = (int)BinaryPrimitives.ReadUInt32BigEndian(head[12..]);
        var version = BinaryPrimitives.ReadUInt32BigEndian(head[8..]);
        if (version != 1)
        {
            Defects.Add(CaptureDefectKind.VersionUnknown, 0, $"the file is of btsnoop version {version}, and 1 is read");
            ended = true;
        }

        Window.Advance(FileHead);
    }

    public override bool Read(out CapturedPacket packet)
    {
        packet = default;
        while (!ended)
        {
            if (!Head(RecordHead, "a record header", out var head))
            {
                ended = true;
                break;
            }

            var included = BinaryPrimitives.ReadUInt32BigEndian(head[4..]);
            if (included > LongestBlock)
            {
                Defects.Add(CaptureDefectKind.LengthOutOfRange, Offset, $"a record of {included} bytes is longer than any that is captured");
                ended = true;
                break;
            }

            if (!Whole(RecordHead + (int)included, "a record", out var record))
            {
                ended = true;
                break;
            }

            var offset = Offset;
            Window.Advance(record.Length);
            Packets++;
            var microseconds = BinaryPrimitives.ReadInt64BigEndian(record[16..]) - (Int128)MicrosecondsFromYear0To1970;
            if (microseconds > long.MaxValue / 1_000 || microseconds < long.MinValue / 1_000)
            {
                Defects.Add(CaptureDefectKind.TimeOutOfRange, offset, "the time of the record cannot be one");
                continue;
            }

            packet = new CapturedPacket
            {
                Offset = offset,
                LinkType = datalink,
                BigEndian = true,
                TimeNanoseconds = (long)microseconds * 1_000,
                Interface = 0,
                Flags = BinaryPrimitives.ReadUInt32BigEndian(record[8..]),
                OriginalLength = BinaryPrimitives.ReadUInt32BigEndian(record),
                Data = record[RecordHead..],
            };
            return true;
        }

        return false;
    }
}
