using Bunit;
using Tarry.Tests;
using Tarry.Web.Pages;

namespace Tarry.Web.Tests.Pages;

public sealed class QualityPageTests(StoredShelf shelf) : BunitContext, IClassFixture<StoredShelf>
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    [Fact]
    public void Page_OfAStudy_ReconcilesCountsAndListsWhatWasRefused()
    {
        var page = Open(shelf);
        Assert.Contains("Of 1,082\u00A0captured trials 1,071 are used; 9 are missed and 2 are refused.", page.Find(".lead").TextContent, StringComparison.Ordinal);
        Assert.Contains("line 9: latency is not a number", page.Find("#refused").TextContent, StringComparison.Ordinal);
        Assert.Contains("Nothing is set aside.", page.Find("#set-aside").TextContent, StringComparison.Ordinal);
        Assert.Equal(9, page.FindAll(".clocks tbody tr").Count);
        Assert.Contains("Loss favours", page.Find("#cautions").TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(page.FindAll($"#cautions a[href='study/links/condition/{StoredStudy.Slow}#cautions']"));
    }

    [Fact]
    public async Task Page_WithoutTrials_ClearsNothing()
    {
        await using var own = new PageContext();
        own.Study("pads");
        var page = own.Render<QualityPage>(parameters => parameters.Add(shown => shown.Study, "pads"));
        page.WaitForElement("#rig", Patience);
        Assert.Contains("There is nothing to check yet.", page.Find(".lead").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("No session drifts", page.Find("#cautions").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_OfAWholeStudy_SaysThatItIsWhole()
    {
        var page = Open(shelf);
        await page.Find("#integrity button").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("The study is whole: 9\u00A0sessions", page.Find("#integrity").TextContent, StringComparison.Ordinal), Patience);
    }

    [Fact]
    public async Task Check_OfADamagedFile_NamesItAndTheRemedy()
    {
        using var own = new StoredShelf();
        var page = Open(own);
        var trials = Path.Combine(own.Folder, "sessions", StoredStudy.Odd, "trials.parquet");
        var bytes = File.ReadAllBytes(trials);
        bytes[bytes.Length / 2] ^= 1;
        File.WriteAllBytes(trials, bytes);
        await page.Find("#integrity button").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("The study is not whole", page.Find("#integrity").TextContent, StringComparison.Ordinal), Patience);
        Assert.Contains($"sessions/{StoredStudy.Odd}/trials.parquet", page.Find("#integrity code").ParentElement!.ParentElement!.TextContent + page.Find("#integrity .fault").TextContent, StringComparison.Ordinal);
        Assert.Contains("What to do", page.Find("#integrity .fault").TextContent, StringComparison.Ordinal);
    }

    private IRenderedComponent<QualityPage> Open(StoredShelf own)
    {
        var page = own.Open<QualityPage>(this);
        page.WaitForElement("#rig", Patience);
        return page;
    }
}
