using Tarry.Metrology;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Linux;

namespace Tarry.Rig.Tests.HostEvents;

/// <summary>
/// Layout and codes after linux/input.h and input-event-codes.h of Debian's linux-libc-dev 6.1.187; sizes and offsets of
/// struct input_event were taken with a compiled probe. The hex below is written after them by hand.
/// </summary>
public class EvdevFramingTests
{
    // 1700000000 s, 9000 us.
    private const string Stamp = "00f1536500000000 2823000000000000";
    private const string AxisLow = Stamp + "0300 0000 0080ffff";
    private const string SouthDown = Stamp + "0100 3001 01000000";
    private const string EndOfReport = Stamp + "0000 0000 00000000";
    private const string Dropped = Stamp + "0000 0300 00000000";
    private const long StampNanoseconds = 1_700_000_000_009_000_000;

    [Fact]
    public void Push_OfAReport_GivesItsEventsAndStamp()
    {
        var heard = new Heard();
        var framing = new EvdevFraming(24, _ => Assert.Fail("nothing was lost"));
        framing.Push(Bytes(AxisLow + SouthDown + EndOfReport), heard.Take);
        var (stamp, events, bytes, follows) = Assert.Single(heard.Reports);
        Assert.Equal(StampNanoseconds, stamp);
        Assert.Equal([new InputEvent(3, 0, -32768), new InputEvent(1, 0x130, 1)], events);
        Assert.Empty(bytes);
        Assert.False(follows);
    }

    [Fact]
    public void Push_OfThirtyTwoBitTimes_GivesTheSame()
    {
        var heard = new Heard();
        new EvdevFraming(16, _ => { }).Push(Bytes("00f15365 28230000 0100 3001 01000000 00f15365 28230000 0000 0000 00000000"), heard.Take);
        Assert.Equal(StampNanoseconds, Assert.Single(heard.Reports).Stamp);
        Assert.Equal([new InputEvent(1, 0x130, 1)], heard.Reports[0].Events);
    }

    [Fact]
    public void Push_AfterDropped_DropsUpToTheNextReportAndReadsTheStateAgain()
    {
        var heard = new Heard();
        var framing = new EvdevFraming(24, events => events.Add(new InputEvent(1, 0x131, 1)));
        framing.Push(Bytes(AxisLow + Dropped + SouthDown + EndOfReport + SouthDown + EndOfReport), heard.Take);
        Assert.Equal(2, heard.Reports.Count);
        Assert.Equal([new InputEvent(1, 0x131, 1)], heard.Reports[0].Events);
        Assert.True(heard.Reports[0].FollowsALoss);
        Assert.Equal([new InputEvent(1, 0x130, 1)], heard.Reports[1].Events);
        Assert.False(heard.Reports[1].FollowsALoss);
        Assert.Equal(1, framing.Losses);
    }

    [Fact]
    public void Push_HoweverItIsCut_GivesTheSameReports()
    {
        var bytes = Bytes(AxisLow + EndOfReport + SouthDown + Dropped + SouthDown + EndOfReport + AxisLow + SouthDown + EndOfReport);
        var whole = Reports(bytes, bytes.Length);
        Assert.Equal(3, whole.Count);
        for (var piece = 1; piece < bytes.Length; piece++)
        {
            Assert.Equal(whole, Reports(bytes, piece));
        }
    }

    [Fact]
    public void Push_OfAnything_NeverThrowsAndKeepsItsPlace()
    {
        var random = new SeededGenerator(71);
        for (var round = 0; round < 2000; round++)
        {
            var heard = new Heard();
            var framing = new EvdevFraming(round % 2 == 0 ? 24 : 16, _ => { });
            var size = round % 2 == 0 ? 24 : 16;
            var bytes = new byte[random.NextInt32(40) * size];
            foreach (ref var value in bytes.AsSpan())
            {
                value = (byte)(random.NextInt32(3) == 0 ? random.NextInt32(256) : random.NextInt32(2));
            }

            framing.Push(bytes, heard.Take);
            var ends = Enumerable.Range(0, bytes.Length / size).Count(index => bytes.AsSpan((index * size) + size - 8, 4).IndexOfAnyExcept((byte)0) < 0);
            Assert.Equal(ends, heard.Reports.Count);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(32)]
    public void Framing_OfAnotherSize_IsRefused(int size) => Assert.Throws<ArgumentOutOfRangeException>(() => new EvdevFraming(size, _ => { }));

    private static List<string> Reports(byte[] bytes, int piece)
    {
        var heard = new Heard();
        var framing = new EvdevFraming(24, events => events.Add(new InputEvent(1, 0x131, 1)));
        foreach (var cut in bytes.Chunk(piece))
        {
            framing.Push(cut, heard.Take);
        }

        return [.. heard.Reports.Select(report => $"{report.Stamp} {string.Join(' ', report.Events)} {report.FollowsALoss}")];
    }

    private static byte[] Bytes(string hex) => Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal));
}
