using Bunit;
using Tarry.Tests;
using Tarry.Web.Pages;

namespace Tarry.Web.Tests.Pages;

public sealed class ConditionPageTests(StoredShelf shelf) : BunitContext, IClassFixture<StoredShelf>
{
    private const string OddSitting = "tuesday";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    [Fact]
    public void Page_OfACondition_HasItsFiguresNeighboursAndSections()
    {
        var page = shelf.Open<ConditionPage>(this, id: StoredStudy.Quick);
        Assert.Equal(StoredStudy.Quick, page.Find("h1").TextContent);
        Assert.Equal($"study/links/condition/{StoredStudy.Reference}", page.Find("a[rel=prev]").GetAttribute("href"));
        Assert.Equal($"study/links/condition/{StoredStudy.Slow}", page.Find("a[rel=next]").GetAttribute("href"));
        foreach (var section in new[] { "latencies", "late", "device", "order", "sessions", "chain", "budget" })
        {
            Assert.Single(page.FindAll($"section#{section}"));
        }

        Assert.Contains("4.5", page.Find(".figures").TextContent, StringComparison.Ordinal);
        Assert.Contains($"{StoredStudy.Quick} against {StoredStudy.Reference} is undecided", page.Find(".lead").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Page_WithoutAName_ShowsTheFirstOfTheStanding() =>
        Assert.Equal(StoredStudy.Reference, shelf.Open<ConditionPage>(this).Find("h1").TextContent);

    [Fact]
    public void Page_OfNoSuchCondition_LeadsToTheStanding()
    {
        var page = shelf.Open<ConditionPage>(this, id: "no-such");
        Assert.Contains("There is no condition of this name", page.Markup, StringComparison.Ordinal);
        Assert.Equal("study/links/standing", page.Find(".empty a").GetAttribute("href"));
    }

    [Fact]
    public void Page_OfOneSitting_DrawsItAlone()
    {
        var page = shelf.Open<ConditionPage>(this, "?sitting=tuesday", StoredStudy.Slow);
        Assert.Equal("tuesday", page.Find("#order nav a[aria-current]").TextContent);
        Assert.DoesNotContain("wednesday", page.Find("#order figure").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void SettingAside_WithoutAReason_IsNotOffered()
    {
        var page = shelf.Open<ConditionPage>(this, $"?aside={OddSitting}", StoredStudy.Slow);
        Assert.True(page.Find("#aside button[type=submit]").HasAttribute("disabled"));
    }

    [Fact]
    public async Task SettingAside_Tried_ShowsWhatChangesAndWritesNothing()
    {
        using var own = new StoredShelf();
        var before = File.ReadAllText(Path.Combine(own.Folder, "study.toml"));
        var page = await Try(own);
        Assert.Contains("2\u00A0sessions, 234\u00A0trials", page.Find("#aside table").TextContent, StringComparison.Ordinal);
        Assert.Contains($"{StoredStudy.Reference} against {StoredStudy.Slow}: undecided", page.Find("#aside ul").TextContent, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(Path.Combine(own.Folder, "study.toml")));
    }

    [Fact]
    public async Task SettingAside_KeptAndUndone_LeavesTheStudyAsItWas()
    {
        using var own = new StoredShelf();
        var before = File.ReadAllText(Path.Combine(own.Folder, "study.toml"));
        var page = await Try(own);
        await page.Find("#aside button.main").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("tuesday.quill-dongle: loose cable", page.Find(".set-aside").TextContent, StringComparison.Ordinal), Patience);
        Assert.Contains("reason = \"loose cable\"", File.ReadAllText(Path.Combine(own.Folder, "study.toml")), StringComparison.Ordinal);
        Assert.True(own.Desk.Findings().IsCompletedSuccessfully); // what was tried is known already
        await page.Find("#sessions p[role=status] button").ClickAsync();
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".set-aside")), Patience);
        Assert.Equal(before, File.ReadAllText(Path.Combine(own.Folder, "study.toml")));
    }

    [Fact]
    public async Task SettingAside_WhileAnotherProgramHoldsTheStudy_SaysWho()
    {
        using var own = new StoredShelf();
        var page = await Try(own);
        using var held = own.Desk.Open().AcquireLock("tarry run");
        await page.Find("#aside button.main").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("tarry run", page.Find("#aside [role=alert]").TextContent, StringComparison.Ordinal), Patience);
    }

    private async Task<IRenderedComponent<ConditionPage>> Try(StoredShelf own)
    {
        var page = own.Open<ConditionPage>(this, $"?aside={OddSitting}", StoredStudy.Slow);
        await page.Find("#aside input").InputAsync(new() { Value = "loose cable" });
        await page.Find("#aside form").SubmitAsync();
        page.WaitForElement("#aside table", Patience);
        return page;
    }
}
