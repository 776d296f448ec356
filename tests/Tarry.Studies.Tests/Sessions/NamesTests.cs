using Tarry.Studies.Sessions;

namespace Tarry.Studies.Tests.Sessions;

public sealed class NamesTests
{
    [Theory]
    [InlineData("a")]
    [InlineData("0")]
    [InlineData("quill-usb_2")]
    [InlineData("console")]
    [InlineData("com10")]
    public void IsName_AllowedForms_AreNames(string text) => Assert.True(Names.IsName(text));

    [Theory]
    [InlineData("")]
    [InlineData("-a")]
    [InlineData("Quill")]
    [InlineData("a b")]
    [InlineData("a.b")]
    [InlineData("a\n")]
    [InlineData("../a")]
    [InlineData("ä")]
    [InlineData("con")]
    [InlineData("lpt1")]
    public void IsName_OtherForms_AreNot(string text)
    {
        Assert.False(Names.IsName(text));
        Assert.Throws<ArgumentException>(() => new SessionKey("monday", text));
    }

    [Fact]
    public void IsName_64And65Letters_IsTheBound()
    {
        Assert.True(Names.IsName(new string('a', 64)));
        Assert.False(Names.IsName(new string('a', 65)));
    }

    [Theory]
    [InlineData(" Quill 2 (USB) ", "quill-2-usb")]
    [InlineData("CON", "con-")]
    [InlineData("***", null)]
    public void FromText_AnyText_IsANameOrNothing(string text, string? name)
    {
        Assert.Equal(name, Names.FromText(text));
        Assert.True(name is null || Names.IsName(name));
    }
}
