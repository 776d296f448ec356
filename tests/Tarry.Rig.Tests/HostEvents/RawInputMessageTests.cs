using System.Buffers.Binary;
using Tarry.Metrology;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Windows;

namespace Tarry.Rig.Tests.HostEvents;

/// <summary>
/// Messages constructed after the structures that Microsoft documents (learn.microsoft.com, winuser.h: RAWINPUTHEADER, RAWMOUSE,
/// RAWKEYBOARD, RAWHID), with natural alignment: RAWMOUSE has its button flags at 4, behind two bytes of padding. None was recorded.
/// </summary>
public class RawInputMessageTests
{
    private const long Device = 0x1_0203_0405;
    private const long Stamp = 42;

    [Fact]
    public void Read_OfAMouse_GivesButtonsAndSteps()
    {
        // Left down 0x0001, right up 0x0008; 5 left, 7 down.
        var body = "0000 0000 0900 0000 00000000 fbffffff 07000000 00000000";
        var events = Read(Message(0, body)).Single().Events;
        Assert.Equal([new InputEvent(1, 0x110, 1), new InputEvent(1, 0x111, 0), new InputEvent(2, 0, -5), new InputEvent(2, 1, 7)], events);
    }

    [Fact]
    public void Read_OfAWheel_GivesItsTurn()
    {
        // RI_MOUSE_WHEEL 0x0400 with -120, one notch towards the user.
        var events = Read(Message(0, "0000 0000 0004 88ff 00000000 00000000 00000000 00000000")).Single().Events;
        Assert.Equal([new InputEvent(2, 8, -120)], events);
    }

    [Theory]
    [InlineData("1e00 0000 0000 4100 00010000 00000000", 30, 1)]
    [InlineData("1e00 0100 0000 4100 01010000 00000000", 30, 0)]
    [InlineData("4800 0200 0000 2600 00010000 00000000", 0x1148, 1)]
    public void Read_OfAKeyboard_GivesTheScanCode(string body, int code, int value) =>
        Assert.Equal([new InputEvent(1, (ushort)code, value)], Read(Message(1, body)).Single().Events);

    [Fact]
    public void Read_OfAHidDevice_GivesEachReport()
    {
        var reports = Read(Message(2, "03000000 02000000 01aabb 01ccdd"));
        Assert.Equal(["01AABB", "01CCDD"], reports.Select(report => Convert.ToHexString(report.Bytes)));
        Assert.All(reports, report => Assert.Equal(Stamp, report.Stamp));
    }

    [Fact]
    public void Device_IsReadInBothWidths()
    {
        Assert.Equal(Device, RawInputMessage.Device(Message(2, "01000000 01000000 00"), 8));
        Assert.Equal(0x77, RawInputMessage.Device(Convert.FromHexString("0000000010000000" + "77000000" + "00000000"), 4));
        Assert.Null(RawInputMessage.Device([1, 2, 3], 8));
    }

    [Theory]
    [InlineData(0, "0000 0000 0900 0000 00000000 fbffffff 07000000 000000")]
    [InlineData(1, "1e00 0000 0000 4100 00010000 000000")]
    [InlineData(2, "03000000 02000000 01aabb 01cc")]
    [InlineData(2, "00000000 ffffffff 01")]
    [InlineData(2, "ffffffff ffffffff 01")]
    [InlineData(3, "00000000 00000000 00")]
    public void Read_OfAMessageCutShortOrUnknown_GivesNothing(int kind, string body)
    {
        var heard = new Heard();
        Assert.False(RawInputMessage.Read(Message(kind, body), 8, Stamp, heard.Take));
        Assert.Empty(heard.Reports);
    }

    [Fact]
    public void Read_OfAnything_NeverThrowsNorReadsPastTheEnd()
    {
        var random = new SeededGenerator(72);
        for (var round = 0; round < 20_000; round++)
        {
            var bytes = new byte[random.NextInt32(80)];
            foreach (ref var value in bytes.AsSpan())
            {
                value = (byte)(random.NextInt32(4) == 0 ? random.NextInt32(256) : random.NextInt32(4));
            }

            var heard = new Heard();
            var understood = RawInputMessage.Read(bytes, round % 2 == 0 ? 8 : 4, Stamp, heard.Take);
            Assert.True(understood || heard.Reports.Count == 0);
            Assert.True(heard.Reports.Sum(report => report.Bytes.Length) <= bytes.Length);
        }
    }

    private static List<(long Stamp, InputEvent[] Events, byte[] Bytes, bool FollowsALoss)> Read(byte[] message)
    {
        var heard = new Heard();
        Assert.True(RawInputMessage.Read(message, 8, Stamp, heard.Take));
        return heard.Reports;
    }

    private static byte[] Message(int kind, string body)
    {
        var rest = Convert.FromHexString(body.Replace(" ", "", StringComparison.Ordinal));
        var message = new byte[24 + rest.Length];
        BinaryPrimitives.WriteInt32LittleEndian(message, kind);
        BinaryPrimitives.WriteInt32LittleEndian(message.AsSpan(4), message.Length);
        BinaryPrimitives.WriteInt64LittleEndian(message.AsSpan(8), Device);
        rest.CopyTo(message, 24);
        return message;
    }
}
