using Bunit;
using Tarry.Web.Pages;
using Tarry.Web.Play;

namespace Tarry.Web.Tests.Pages;

public sealed class PlayPageTests(StoredShelf shelf) : BunitContext, IClassFixture<StoredShelf>
{
    [Fact]
    public void Page_AsTheStudyStates_HasCurveAndTables()
    {
        var page = shelf.Open<PlayPage>(this);
        Assert.Contains("A constant delay can be learned", page.Markup, StringComparison.Ordinal);
        Assert.Contains("within 16.7\u00A0ms", page.Find(".written").TextContent, StringComparison.Ordinal);
        Assert.Equal("8.3, 16.7, 33.3", page.FindAll("input")[0].GetAttribute("value"));
    }

    [Fact]
    public void Page_ForOtherWindows_IsJudgedByThese()
    {
        var page = shelf.Open<PlayPage>(this, "?windows=5&sd=3");
        page.WaitForAssertion(() => Assert.Contains("within 5\u00A0ms", page.Find(".written").TextContent, StringComparison.Ordinal), TimeSpan.FromSeconds(60));
        Assert.DoesNotContain("16.7", page.Find(".written").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Page_ForNonsense_SaysWhatIsWrongBesideTheField()
    {
        var page = shelf.Open<PlayPage>(this, "?windows=wide&sd=0.01");
        Assert.Contains("'wide' is not a number", page.Find("#windows-help").TextContent, StringComparison.Ordinal);
        Assert.Contains("0.01 is not possible", page.Find("#players-help").TextContent, StringComparison.Ordinal);
        Assert.Equal("true", page.FindAll("input")[0].GetAttribute("aria-invalid"));
    }

    [Fact]
    public async Task Page_Asked_PutsTheNumbersInTheAddress()
    {
        var page = shelf.Open<PlayPage>(this);
        await page.FindAll("input")[0].ChangeAsync(new() { Value = "4, 9.5" });
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.EndsWith("play?windows=4%2C9.5&sd=0%2C10", page.Instance.Navigation.Uri, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("8.3, 16.7", new[] { 8.3, 16.7 }, null)]
    [InlineData("", null, null)]
    [InlineData("0", null, "0 is not possible; each must be more than 0 and at most 1000 milliseconds.")]
    [InlineData("1,2,3,4,5,6,7", null, "Give from one to 6 numbers.")]
    [InlineData("1e999", null, "'1e999' is not a number; write numbers with a decimal point and commas between them, such as 8.3, 16.7.")]
    public void Parse_OfWindows_GivesNumbersOrWhatIsWrong(string text, double[]? expected, string? problem)
    {
        var query = PlayQuery.Parse(text, null);
        Assert.Equal(expected, query.Entry.WindowsMs);
        Assert.Equal(problem, query.WindowsProblem);
        Assert.Equal(expected is not null, query.IsStated);
    }
}
