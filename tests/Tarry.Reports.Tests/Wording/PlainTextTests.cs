using Tarry.Reports.Wording;

namespace Tarry.Reports.Tests.Wording;

public sealed class PlainTextTests
{
    [Theory]
    [InlineData("Quill 2 \"Pro\" <b>&amp;", "Quill 2 \"Pro\" <b>&amp;")]
    [InlineData("two\nlines\tand a tab", "two lines and a tab")]
    [InlineData("nul\0bell\a", "nul\uFFFDbell\uFFFD")]
    [InlineData("\u202Eevil", "\uFFFDevil")]
    [InlineData("🎮", "🎮")]
    public void Clean_Text_KeepsWhatADocumentCanHold(string text, string clean) => Assert.Equal(clean, PlainText.Clean(text));

    [Fact]
    public void Clean_HalfASurrogatePair_IsReplaced() => Assert.Equal("a\uFFFDb", PlainText.Clean("a\uD83Db"));
}
