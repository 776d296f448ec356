using Bunit;
using Tarry.Tests;
using Tarry.Web.Pages;

namespace Tarry.Web.Tests.Pages;

public sealed class StandingPageTests(StoredShelf shelf) : BunitContext, IClassFixture<StoredShelf>
{
    [Fact]
    public void Page_ByMean_RanksAndLeadsToTheEvidence()
    {
        var page = shelf.Open<StandingPage>(this);
        var names = page.FindAll("tbody th a:not(.cautions)");
        Assert.Equal([StoredStudy.Reference, StoredStudy.Quick, StoredStudy.Slow], names.Select(name => name.TextContent));
        Assert.Equal($"study/links/condition/{StoredStudy.Quick}", names[1].GetAttribute("href"));
        Assert.Contains(page.FindAll("tbody a.plain"), link => link.GetAttribute("href") == $"study/links/compare?a={StoredStudy.Quick}&b={StoredStudy.Reference}");
        Assert.Contains("3\u00A0sessions, 360\u00A0trials", page.Find("tbody").TextContent, StringComparison.Ordinal);
        Assert.Equal("ascending", page.FindAll("thead th").Single(head => head.TextContent.StartsWith("mean, ms\u00A0", StringComparison.Ordinal)).GetAttribute("aria-sort"));
        Assert.Equal(3, page.FindAll("td.strip-cell svg circle").Count);
    }

    [Fact]
    public void Page_ByAnotherFigure_SaysThatRanksBelongToTheMean()
    {
        var page = shelf.Open<StandingPage>(this, "?sort=-missed");
        Assert.Contains("Ranks and tie groups belong to the mean", page.Find("caption").TextContent, StringComparison.Ordinal);
        Assert.Equal(StoredStudy.Slow, page.Find("tbody th a").TextContent);
    }

    [Fact]
    public void Page_Filtered_ShowsWhatIsAskedForAndHowManyThereAre()
    {
        var page = shelf.Open<StandingPage>(this, "?link=dongle");
        Assert.Equal(StoredStudy.Slow, Assert.Single(page.FindAll("tbody th a:not(.cautions)")).TextContent);
        Assert.Contains("1 of 3 conditions", page.Markup, StringComparison.Ordinal);
        Assert.Equal("dongle", page.FindAll("select").Single(select => select.ParentElement!.TextContent.Contains("link", StringComparison.Ordinal)).GetAttribute("value"));
    }

    [Fact]
    public void Page_FilteredToNothing_OffersAllAgain()
    {
        var page = shelf.Open<StandingPage>(this, "?link=string&device=Board");
        Assert.Contains("No condition is all of this", page.Markup, StringComparison.Ordinal);
        Assert.Equal("study/links/standing", page.Find(".empty a").GetAttribute("href"));
    }

    [Fact]
    public async Task Page_ChoosingALevel_PutsItInTheAddress()
    {
        var page = shelf.Open<StandingPage>(this, "?sort=p99");
        await page.FindAll("select").Single(select => select.ParentElement!.TextContent.Contains("link", StringComparison.Ordinal)).ChangeAsync(new() { Value = "dongle" });
        page.WaitForAssertion(() => Assert.Single(page.FindAll("tbody tr")));
        Assert.EndsWith("standing?sort=p99&link=dongle", page.Instance.Navigation.Uri, StringComparison.Ordinal);
    }

    [Fact]
    public void Page_OfHostileNames_EscapesThem()
    {
        var page = shelf.Open<StandingPage>(this);
        Assert.Contains("Two links <b>&</b> a board", page.Find(".study-title").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("b"));
    }

    [Fact]
    public void Page_OfNoSuchStudy_SaysSo() =>
        Assert.Contains("There is no study of this name", shelf.Open<StandingPage>(this, study: "..~1..").Markup, StringComparison.Ordinal);

    [Fact]
    public void Page_OfANewStudy_IsWorkingFirstAndThenSaysWhereTrialsComeFrom()
    {
        using var own = new StoredShelf();
        Studies.Study.Create(Path.Combine(own.Parent, "new"), "New", null, 0.5);
        Assert.Contains("The study has no trials yet", own.Open<StandingPage>(this, study: "new").Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Page_OfADamagedStudy_ShowsPlaceAndRemedy()
    {
        using var own = new StoredShelf();
        var trials = Path.Combine(own.Folder, "sessions", StoredStudy.Odd, "trials.parquet");
        var bytes = File.ReadAllBytes(trials);
        bytes[bytes.Length / 2] ^= 1;
        File.WriteAllBytes(trials, bytes);
        var fault = own.Open<StandingPage>(this).Find("[role=alert]").TextContent;
        Assert.Contains($"sessions/{StoredStudy.Odd}/trials.parquet", fault, StringComparison.Ordinal);
        Assert.Contains("What to do", fault, StringComparison.Ordinal);
    }
}
