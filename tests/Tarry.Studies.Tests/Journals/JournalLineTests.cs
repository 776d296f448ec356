using System.Text;
using Tarry.Studies.Journals;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Tests.Journals;

public sealed class JournalLineTests
{
    // The check value of CRC-32/ISCSI (CRC-32C) in the catalogue of parametrised CRC algorithms (reveng).
    [Fact]
    public void Crc32C_CheckString_IsTheCatalogueValue() => Assert.Equal(0xe3069283u, JournalLine.Crc32C("123456789"u8));

    // RFC 3720 appendix B.4; the bytes there are listed least significant first.
    [Fact]
    public void Crc32C_ExamplesOfRfc3720_Agree()
    {
        Assert.Equal(0x8a9136aau, JournalLine.Crc32C(new byte[32]));
        Assert.Equal(0x62a8ab43u, JournalLine.Crc32C(Enumerable.Repeat((byte)0xff, 32).ToArray()));
        Assert.Equal(0x46dd794eu, JournalLine.Crc32C(Enumerable.Range(0, 32).Select(i => (byte)i).ToArray()));
        Assert.Equal(0x113fdb5cu, JournalLine.Crc32C(Enumerable.Range(0, 32).Select(i => (byte)(31 - i)).ToArray()));
    }

    [Fact]
    public void Encode_AnyLine_ChecksumCoversSessionNumberAndContent()
    {
        var crc = JournalLine.Crc32C("monday.quill-usb 3 e \"x\""u8);
        Assert.Equal($"{crc:x8} e \"x\"\n", Encoding.UTF8.GetString(JournalLine.Encode("monday.quill-usb", 3, "e \"x\"")));
    }

    [Theory]
    [InlineData("monday.quill-usb", 4)]
    [InlineData("tuesday.quill-usb", 3)]
    public void TryDecode_LineOfAnotherPlace_IsRefused(string session, long number)
    {
        var line = JournalLine.Encode("monday.quill-usb", 3, "n true").AsSpan()[..^1];
        Assert.True(JournalLine.TryDecode("monday.quill-usb", 3, line, out _));
        Assert.False(JournalLine.TryDecode(session, number, line, out _));
    }

    [Fact]
    public void TryDecode_ChecksumInCapitals_IsRefused()
    {
        var line = JournalLine.Encode("a.b", 1, "n true").AsSpan()[..^1].ToArray();
        var capitals = Encoding.ASCII.GetBytes(Encoding.ASCII.GetString(line, 0, 8).ToUpperInvariant());
        Assert.NotEqual(line[..8], capitals);
        capitals.CopyTo(line, 0);
        Assert.False(JournalLine.TryDecode("a.b", 1, line, out _));
    }

    [Fact]
    public void Trial_EveryFieldAtItsBounds_ReadsBackTheSame()
    {
        Trial[] trials =
        [
            new(1, 0, null, null, null, Outcome.Missed, TrialFlags.None, 0),
            new(long.MaxValue, int.MaxValue, long.MaxValue, 0, long.MaxValue, Outcome.Early, (TrialFlags)255, 255),
        ];
        Assert.All(trials, trial => Assert.Equal(trial, JournalLine.ReadTrial(Encoding.UTF8.GetBytes(JournalLine.Trial(trial)[2..]))));
    }
}
