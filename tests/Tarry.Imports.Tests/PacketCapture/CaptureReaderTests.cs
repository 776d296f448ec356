using Tarry.Imports.PacketCapture.Files;

namespace Tarry.Imports.Tests.PacketCapture;

/// <summary>
/// The hex of whole blocks follows the layouts of IETF draft-ietf-opsawg-pcapng and draft-ietf-opsawg-pcap, and BlueZ's btsnoop.c; tshark
/// reads files of the same bytes with the same times.
/// </summary>
public class CaptureReaderTests
{
    private const string Section = "0a0d0d0a1c0000004d3c2b1a01000000ffffffffffffffff1c000000";
    private const string NanosecondInterface = "0100000020000000dc00000000000000090001000900000000000000" + "20000000";

    [Fact]
    public void Read_PcapNgOfTheDraft_HasItsTimeLinkTypeAndBytes()
    {
        // Enhanced packet of 72 bytes at 1700000000.009 s in nanoseconds.
        var file = Convert.FromHexString(Section + NanosecondInterface + "060000006800000000000000fe9c97174054b3364800000048000000" + new string('7', 144) + "68000000");

        var packets = ReadAll(file, out var reader);

        var packet = Assert.Single(packets);
        Assert.Equal((1_700_000_000_009_000_000, 220, 72, 60L), (packet.Time, packet.LinkType, packet.Data.Length, packet.Offset));
        Assert.Equal(0, reader.Defects.Total);
    }

    [Fact]
    public void Read_BtSnoopRecord_HasItsTimeAndFlags()
    {
        var file = Convert.FromHexString("6274736e6f6f700000000001000003ea" + "0000001000000010000000010000000000e2e7d7274fa240" + "0240200b0007004100a10101807f0000");

        var packet = Assert.Single(ReadAll(file, out _));

        Assert.Equal((1_700_000_000_123_456_000, 1002, 16), (packet.Time, packet.LinkType, packet.Data.Length));
    }

    [Theory]
    [InlineData(false, false)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(true, true)]
    public void Read_PcapOfEitherOrderAndResolution_HasTheSamePackets(bool nanoseconds, bool bigEndian)
    {
        SamplePacket[] packets = [new(SampleCaptures.Start + 1_000, [1, 2, 3]), new(SampleCaptures.Start + 999_999_000, []), new(4_294_967_295_000_000_000, [9])];

        var read = ReadAll(SampleFiles.Pcap(189, packets, nanoseconds, bigEndian), out var reader);

        Assert.Equal(packets.Select(packet => packet.TimeNanoseconds), read.Select(packet => packet.Time));
        Assert.Equal(packets.Select(packet => packet.Data), read.Select(packet => packet.Data));
        Assert.Equal(0, reader.Defects.Total);
    }

    // if_tsresol: the high bit clear is a power of ten, set a power of two; if_tsoffset adds seconds.
    [Theory]
    [InlineData(6, 1_700_000_000_123_456UL, 0, 1_700_000_000_123_456_000, false)]
    [InlineData(3, 1_700_000_000_123UL, 0, 1_700_000_000_123_000_000, false)]
    [InlineData(0, 1_700_000_000UL, 0, 1_700_000_000_000_000_000, false)]
    [InlineData(9, 123UL, 1_700_000_000, 1_700_000_000_000_000_123, false)]
    [InlineData(12, 1_500UL, 0, 2, true)]
    [InlineData(0x80 | 20, 1_048_576UL, 0, 1_000_000_000, true)]
    [InlineData(0x80 | 20, 1UL, 0, 954, true)]
    [InlineData(0x80 | 32, 0x1_8000_0000UL, 5, 6_500_000_000, true)]
    [InlineData(0x80 | 0, 7UL, -7, 0, false)]
    [InlineData(0x80 | 127, ulong.MaxValue, 0, 0, true)]
    [InlineData(127, ulong.MaxValue, 0, 0, true)]
    public void Read_Resolution_GivesTheTime(int resolution, ulong ticks, long offset, long nanoseconds, bool rounds)
    {
        byte[] file =
        [
            .. SampleFiles.Section(),
            .. SampleFiles.Interface(220, false, (9, [(byte)resolution]), (14, BitConverter.GetBytes(offset))),
            .. SampleFiles.Packet(0, ticks, [1]),
        ];

        Assert.Equal(nanoseconds, Assert.Single(ReadAll(file, out var reader)).Time);
        Assert.Equal(rounds, reader.RoundedToNanoseconds);
    }

    [Fact]
    public void Read_SectionsOfBothOrdersAndUnknownBlocks_GivesAllPackets()
    {
        byte[] file =
        [
            .. SampleFiles.Section(),
            .. SampleFiles.Block(0x0BAD, new byte[40]),
            .. SampleFiles.Interface(201, false),
            .. SampleFiles.Interface(220, false),
            .. SampleFiles.Packet(1, 5, [1, 2, 3, 4, 5]),
            .. SampleFiles.Block(5, new byte[16]),
            .. SampleFiles.Section(bigEndian: true),
            .. SampleFiles.Interface(254, true),
            .. SampleFiles.Packet(0, 0x1_0000_0000, [6], bigEndian: true),
        ];

        var read = ReadAll(file, out var reader);

        Assert.Equal([(220, 5_000L, 1), (254, 4_294_967_296_000L, 2)], read.Select(packet => (packet.LinkType, packet.Time, packet.Interface)));
        Assert.Equal(0, reader.Defects.Total);
    }

    [Fact]
    public void Read_ObsoletePacketBlock_IsReadAndSimpleOneRefused()
    {
        var obsolete = SampleFiles.Packet(0, 7, [1, 2]);
        obsolete[0] = 2;
        obsolete[10] = 99;
        byte[] file = [.. SampleFiles.Section(), .. SampleFiles.Interface(220, false), .. obsolete, .. SampleFiles.Block(3, [1, 0, 0, 0, 9, 0, 0, 0])];

        Assert.Equal(7_000, Assert.Single(ReadAll(file, out var reader)).Time);
        Assert.Equal(CaptureDefectKind.TimeOutOfRange, Assert.Single(reader.Defects.First).Kind);
    }

    [Theory]
    [InlineData("pcap")]
    [InlineData("pcapng")]
    [InlineData("btsnoop")]
    public void Read_FileCutAnywhere_KeepsWhatIsWholeAndNamesTheByte(string format)
    {
        var packets = Enumerable.Range(0, 5).Select(index => new SamplePacket(SampleCaptures.Start + (index * 1_000), new byte[10 + index])).ToList();
        var whole = format switch
        {
            "pcap" => SampleFiles.Pcap(220, packets),
            "pcapng" => SampleFiles.PcapNg(220, packets),
            _ => SampleFiles.BtSnoop(1002, packets),
        };
        var ends = new List<long>();
        var all = ReadAll(whole, out _);
        ends.AddRange(all.Skip(1).Select(packet => packet.Offset).Append(whole.Length));
        for (var length = CaptureMagic.Length; length < whole.Length; length++)
        {
            var read = ReadAll(whole[..length], out var reader);

            Assert.Equal(ends.Count(end => end <= length), read.Count);
            if (reader.Defects.Total > 0)
            {
                var defect = Assert.Single(reader.Defects.First);
                Assert.Equal(CaptureDefectKind.CutOff, defect.Kind);
                Assert.True(defect.Offset <= length);
            }
            else
            {
                // Cut between records: nothing tells that more belonged there.
                Assert.True(length == all[0].Offset || ends.Contains(length) || format == "pcapng");
            }
        }
    }

    [Fact]
    public void Read_DamagedLengths_EndThereAndSayWhere()
    {
        byte[] good = [.. SampleFiles.Section(), .. SampleFiles.Interface(220, false), .. SampleFiles.Packet(0, 1, [1])];
        var disagree = SampleFiles.Packet(0, 2, [2]);
        disagree[^4] ^= 4;
        var odd = SampleFiles.Packet(0, 2, [2]);
        odd[4] ^= 1;
        var huge = SampleFiles.Packet(0, 2, [2]);
        huge[7] = 0x7F;
        var unknown = SampleFiles.Packet(3, 2, [2]);

        Check(disagree, CaptureDefectKind.LengthsDisagree);
        Check(odd, CaptureDefectKind.LengthOutOfRange);
        Check(huge, CaptureDefectKind.LengthOutOfRange);
        Check(unknown, CaptureDefectKind.InterfaceUnknown);

        void Check(byte[] bad, CaptureDefectKind kind)
        {
            Assert.Single(ReadAll([.. good, .. bad], out var reader));
            var defect = Assert.Single(reader.Defects.First);
            Assert.Equal((kind, (long)good.Length), (defect.Kind, defect.Offset));
        }
    }

    [Fact]
    public void Open_OtherBytes_IsNoCapture()
    {
        Assert.Null(CaptureReader.Open(new MemoryStream("condition,sitting"u8.ToArray())));
        Assert.Null(CaptureReader.Open(new MemoryStream()));
    }

    private static List<ReadPacket> ReadAll(byte[] file, out CaptureReader reader)
    {
        reader = CaptureReader.Open(new MemoryStream(file))!;
        var packets = new List<ReadPacket>();
        while (reader.Read(out var packet))
        {
            packets.Add(new ReadPacket(packet.Offset, packet.LinkType, packet.Interface, packet.TimeNanoseconds, packet.Data.ToArray()));
        }

        return packets;
    }

    private sealed record ReadPacket(long Offset, int LinkType, int Interface, long Time, byte[] Data);
}
