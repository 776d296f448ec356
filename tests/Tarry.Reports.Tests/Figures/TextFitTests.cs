using Tarry.Reports.Figures;

namespace Tarry.Reports.Tests.Figures;

public sealed class TextFitTests
{
    [Fact]
    public void Cut_TextThatFits_IsLeftAlone() => Assert.Equal("quill", TextFit.Cut("quill", 10));

    [Theory]
    [InlineData("a-name-of-sixty-four-letters-that-no-figure-has-room-for-beside-a")]
    [InlineData("🎮🎮🎮🎮🎮🎮🎮🎮🎮🎮🎮🎮")]
    public void Cut_LongText_EndsInAnEllipsisInsideTheRoom(string text)
    {
        var cut = TextFit.Cut(text, 6);
        Assert.EndsWith("…", cut, StringComparison.Ordinal);
        Assert.True(TextFit.Width(cut) <= 6);
        Assert.DoesNotContain(cut.EnumerateRunes(), rune => rune.Value == 0xFFFD);
    }

    [Fact]
    public void Lines_Text_KeepsEveryWordAndTheRoom()
    {
        const string text = "A bracket joins a tie group: its members are not told from its first.";
        var lines = TextFit.Lines(text, 14);
        Assert.Equal(text, string.Join(' ', lines));
        Assert.All(lines, line => Assert.True(TextFit.Width(line) <= 14));
    }
}
