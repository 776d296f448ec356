using Tarry.Studies.Sessions;

namespace Tarry.Studies.Tests.Sessions;

public sealed class SessionEntryTests
{
    [Theory]
    [InlineData("monday.quill-usb", "monday", "quill-usb", 1)]
    [InlineData("monday.quill-usb@2", "monday", "quill-usb", 2)]
    [InlineData("monday.quill-usb@12", "monday", "quill-usb", 12)]
    public void ParseOrNull_FolderOfASession_ReadsBackTheSame(string name, string sitting, string condition, int revision)
    {
        Assert.Equal(new SessionEntry(new SessionKey(sitting, condition), revision), SessionEntry.ParseOrNull(name));
        Assert.Equal(name, SessionEntry.ParseOrNull(name).ToString());
    }

    [Theory]
    [InlineData("monday")]
    [InlineData("monday.quill-usb@1")]
    [InlineData("monday.quill-usb@02")]
    [InlineData("monday.quill-usb@")]
    [InlineData("monday.quill-usb@-2")]
    [InlineData("monday.quill-usb@2@3")]
    [InlineData("monday.quill.usb")]
    public void ParseOrNull_OtherFolders_AreNone(string name) => Assert.Null(SessionEntry.ParseOrNull(name));
}
