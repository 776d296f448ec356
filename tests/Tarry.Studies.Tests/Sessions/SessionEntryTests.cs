using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

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
    [InlineData("monday.quill-usb.rest", StickProcedure.Rest, 1)]
    [InlineData("monday.quill-usb.flick-release@3", StickProcedure.FlickRelease, 3)]
    [InlineData("monday.quill-usb.substitution", StickProcedure.Substitution, 1)]
    public void ParseOrNull_FolderOfAStick_ReadsBackTheSame(string name, StickProcedure procedure, int revision)
    {
        Assert.Equal(new SessionEntry(new SessionKey("monday", "quill-usb", procedure), revision), SessionEntry.ParseOrNull(name));
        Assert.Equal(name, SessionEntry.ParseOrNull(name).ToString());
    }

    [Theory]
    [InlineData("monday")]
    [InlineData("monday.quill-usb.Rest")]
    [InlineData("monday.quill-usb.rest.rest")]
    [InlineData("monday.quill-usb@1")]
    [InlineData("monday.quill-usb@02")]
    [InlineData("monday.quill-usb@")]
    [InlineData("monday.quill-usb@-2")]
    [InlineData("monday.quill-usb@2@3")]
    [InlineData("monday.quill.usb")]
    public void ParseOrNull_OtherFolders_AreNone(string name) => Assert.Null(SessionEntry.ParseOrNull(name));
}
