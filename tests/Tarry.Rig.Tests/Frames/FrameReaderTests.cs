using System.Text;
using Tarry.Metrology;
using Tarry.Rig.Frames;
using Tarry.Studies.Trials;

namespace Tarry.Rig.Tests.Frames;

public class FrameReaderTests
{
    /// <summary>The golden frames as their page describes the fields, written out by hand.</summary>
    private static readonly RigFrame[] Golden =
    [
        new HelloFrame(7, 1, 2, 16_000_000, 48, "uno", "0.1.0"),
        new TrialFrame(7, 1, 16_000_000, 108_000, Outcome.Response, TrialFlags.None, 1),
        new TrialFrame(7, 2, 0x10c8e1f, null, Outcome.Missed, TrialFlags.None, 0),
        new TrialFrame(7, 3, 20_000_000, 0, Outcome.Early, TrialFlags.LineActiveAtPress, 0),
        new TrialFrame(7, 4, 0x155cc01, 144_000, Outcome.Response, TrialFlags.Bounced, 4),
        new HeartbeatFrame(7, 32_000_000, 4, RigState.Running, 0, 0, 0),
        new PingReplyFrame(7, 2, 0x42, 0x1f00a31),
        new AckFrame(7, 3, 'c'),
        new RefusalFrame(7, 4, 'c', RefusalReason.Range),
        new RunEndFrame(7, 2000, 1980, 20, 0, RunEndReason.Count),
        new ReadingsFrame(7, 1, 20_000_000, 0, [new(511, 512), new(510, 513), new(0, 514), new(1023, 1023), new(512, 0), new(511, 511)]),
        new ReadingsFrame(7, 7, 20_015_616, 3, [new(1023, 0)]),
        new LevelFrame(7, 5, 32_768, 20_974_096),
        new StreamEndFrame(7, 10, 3),
    ];

    [Fact]
    public void Push_GoldenFrames_GivesTheTypedMessages() =>
        Assert.Equal(Golden, Read(Encoding.ASCII.GetBytes(string.Join('\n', ProtocolPage.GoldenFromRig) + "\n")).Select(r => r.Frame));

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    public void Push_PiecesOfAnySize_GivesTheSameMessages(int size)
    {
        var bytes = Encoding.ASCII.GetBytes(string.Join('\n', ProtocolPage.GoldenFromRig) + "\n");
        var reader = new FrameReader();
        var frames = new List<RigFrame?>();
        foreach (var piece in bytes.Chunk(size))
        {
            reader.Push(piece, result => frames.Add(result.Frame));
        }

        Assert.Equal(Golden, frames);
    }

    [Fact]
    public void Push_BadFramesOfThePage_GivesTheErrorThatThePageNames()
    {
        Assert.True(ProtocolPage.Bad.Count >= 13);
        foreach (var line in ProtocolPage.Bad)
        {
            var expected = Enum.GetValues<FrameError>().Single(error => line.EndsWith(" " + error.InWords(), StringComparison.Ordinal));
            var frame = line[..^(expected.InWords().Length + 1)];
            var result = Assert.Single(Read(Encoding.ASCII.GetBytes(frame + "\n")));
            Assert.True(expected == result.Error, $"{frame} gave {result.Error}");
            Assert.Null(result.Frame);
            Assert.Equal(frame, Encoding.ASCII.GetString(result.Bytes.Span));
        }
    }

    [Theory]
    [InlineData("B 0007 01 02 00f42400 30 Uno 0.1.0", FrameError.FieldOutOfRange)]
    [InlineData("B 0007 01 02 00f42400 30 abcdefghijklmnopq 0.1.0", FrameError.FieldOfWrongWidth)]
    [InlineData("B 0007 01 02 00f42400 31 uno 0.1.0", FrameError.FieldOutOfRange)]
    [InlineData("B 0007 01 02 00f42400 30  0.1.0", FrameError.FieldOfWrongWidth)]
    [InlineData("T 0007 00000001 000000f42400 0001a5e0 m 00 01", FrameError.FieldOutOfRange)]
    [InlineData("T 0007 00000001 000000f42400 - e 00 01", FrameError.FieldOutOfRange)]
    [InlineData("T 0007 00000001 000000f42400 0001a5e0 r 10 01", FrameError.FieldOutOfRange)]
    [InlineData("T 0007 00000001 000000f42400 0001a5e0 rr 00 01", FrameError.FieldOfWrongWidth)]
    [InlineData("P 0007 000001e84800 00000004 x 0000 0000 0000", FrameError.FieldOutOfRange)]
    [InlineData("A 0007 03 C", FrameError.FieldOutOfRange)]
    [InlineData("N 0007 04 c never", FrameError.FieldOutOfRange)]
    [InlineData("D 0007 000007d0 000007bc 00000014 00000001 count", FrameError.FieldOutOfRange)]
    [InlineData("TT 0007 00000001 000000f42400 0001a5e0 r 00 01", FrameError.UnknownKind)]
    [InlineData("", FrameError.UnknownKind)]
    [InlineData("h 01", FrameError.UnknownKind)]
    public void Push_BodyThatCannotBe_GivesItsError(string body, FrameError expected) =>
        Assert.Equal(expected, Assert.Single(Read(PlainFrame.Seal(body))).Error);

    [Fact]
    public void Push_LineFeedsAlone_GivesNothing() => Assert.Empty(Read("\n\n\n"u8));

    [Fact]
    public void Push_EightyBytes_AreNotTooLongButEightyOneAre()
    {
        Assert.Equal(FrameError.NoChecksum, Assert.Single(Read(Encoding.ASCII.GetBytes(new string('x', 80) + "\n"))).Error);
        var tooLong = Assert.Single(Read(Encoding.ASCII.GetBytes(new string('x', 81) + "\n")));
        Assert.Equal((FrameError.TooLong, 80, 81L), (tooLong.Error, tooLong.Bytes.Length, tooLong.Length));
    }

    [Fact]
    public void Push_ByteOutsideAscii_IsNamedAndDescribed()
    {
        var result = Assert.Single(Read([0x41, 0x0d, 0xff, 0x0a]));
        Assert.Equal(FrameError.NotAscii, result.Error);
        Assert.Equal(@"not ASCII: A\x0d\xff", result.Describe());
    }

    [Fact]
    public void Push_ThreeHundredMegabytesWithoutALineFeed_DoesNotGrowAndGoesOn()
    {
        var reader = new FrameReader();
        var results = new List<FrameResult>();
        var block = Enumerable.Repeat((byte)'z', 1_000_000).ToArray();
        reader.Push(block, results.Add);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 299; i++)
        {
            reader.Push(block, results.Add);
        }

        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 100_000);
        reader.Push("\n"u8, results.Add);
        reader.Push(Encoding.ASCII.GetBytes(ProtocolPage.GoldenFromRig[1] + "\n"), results.Add);
        Assert.Equal(300_000_000, results[0].Length);
        Assert.Equal(Golden[1], results[1].Frame);
    }

    [Fact]
    public void Push_RandomBytes_NeverGivesAFrameWhoseChecksumDoesNotAgree()
    {
        var random = new SeededGenerator(20);
        var bytes = new byte[2_000_000];
        for (var i = 0; i < bytes.Length; i++)
        {
            bytes[i] = random.NextInt32(40) == 0 ? (byte)'\n' : (byte)random.NextInt32(256);
        }

        Assert.All(Read(bytes), result => Assert.Null(result.Frame));
    }

    [Fact]
    public void Push_EveryFlipOfOneBit_IsRefused()
    {
        // A CRC-16 with a polynomial of more than one term finds every single-bit error (W. W. Peterson, D. T. Brown, 1961).
        foreach (var golden in ProtocolPage.GoldenFromRig)
        {
            for (var bit = 0; bit < golden.Length * 8; bit++)
            {
                var bytes = Encoding.ASCII.GetBytes(golden + "\n");
                bytes[bit / 8] ^= (byte)(1 << (bit % 8));
                Assert.All(Read(bytes), result => Assert.Null(result.Frame));
            }
        }
    }

    [Fact]
    public void Push_RandomDamage_GivesOnlyFramesWhoseBytesAgreeWithABitwiseChecksum()
    {
        var random = new SeededGenerator(21);
        var accepted = 0;
        for (var round = 0; round < 200_000; round++)
        {
            var bytes = Encoding.ASCII.GetBytes(ProtocolPage.GoldenFromRig[round % 10] + "\n");
            for (var flips = random.NextInt32(4); flips > 0; flips--)
            {
                bytes[random.NextInt32(bytes.Length - 1)] ^= (byte)(1 << random.NextInt32(8));
            }

            foreach (var result in Read(bytes))
            {
                if (result.Frame is not null)
                {
                    accepted++;
                    var text = Encoding.ASCII.GetString(result.Bytes.Span);
                    Assert.EndsWith("*" + PlainFrame.Checksum(text[..^5]), text, StringComparison.Ordinal);
                }
            }
        }

        Assert.InRange(accepted, 40_000, 70_000);
    }

    private static List<FrameResult> Read(ReadOnlySpan<byte> bytes)
    {
        var results = new List<FrameResult>();
        new FrameReader().Push(bytes, results.Add);
        return results;
    }
}
