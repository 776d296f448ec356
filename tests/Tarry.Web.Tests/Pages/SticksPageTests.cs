using Bunit;
using Tarry.Web.Pages;

namespace Tarry.Web.Tests.Pages;

public sealed class SticksPageTests(StoredShelf shelf) : BunitContext, IClassFixture<StoredShelf>
{
    [Fact]
    public void Page_OfAStudyWithoutSticks_SaysHowTheyAreRecorded()
    {
        var page = shelf.Open<SticksPage>(this);
        Assert.Contains("no recording of a stick", page.Find(".empty").TextContent, StringComparison.Ordinal);
        Assert.Contains("tarry stick procedures", page.Find(".empty").TextContent, StringComparison.Ordinal);
    }
}
