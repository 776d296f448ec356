using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Tarry.Tests;
using Tarry.Web.Pages;

namespace Tarry.Web.Tests.Pages;

public sealed class ComparePageTests : BunitContext, IClassFixture<StoredShelf>
{
    private readonly StoredShelf shelf;

    public ComparePageTests(StoredShelf shelf)
    {
        this.shelf = shelf;
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    [Fact]
    public void Page_OfAPair_HasVerdictMarginFiguresAndBudget()
    {
        var page = shelf.Open<ComparePage>(this, $"?a={StoredStudy.Quick}&b={StoredStudy.Reference}");
        Assert.Contains($"{StoredStudy.Quick} against {StoredStudy.Reference} is undecided", page.Find(".verdict").TextContent, StringComparison.Ordinal);
        Assert.Contains("0.5\u00A0ms", page.Find(".facts").TextContent, StringComparison.Ordinal);
        Assert.Equal(2, page.FindAll(".pair figure").Count);
        Assert.Equal(9, page.FindAll(".merits tbody tr").Count);
        Assert.Contains("sampling", page.Find(".written").TextContent, StringComparison.Ordinal);
        Assert.Equal($"study/links/compare?a={StoredStudy.Reference}&b={StoredStudy.Quick}", page.FindAll(".choices a").First(link => link.TextContent == "Turn round").GetAttribute("href"));
    }

    [Fact]
    public void Page_WithoutAPair_ShowsAllAgainstTheReferenceAndEveryPair()
    {
        var page = shelf.Open<ComparePage>(this);
        Assert.Single(page.FindAll("figure"));
        var links = page.FindAll(".grid a");
        Assert.Equal(3, links.Count);
        Assert.All(links, link => Assert.Contains(" against ", link.QuerySelector(".unseen")!.TextContent, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("?a=quill-usb&b=quill-usb", "one and the same")]
    [InlineData("?a=quill-usb&b=gone", "no trials of gone")]
    [InlineData("?factor=colour", "differ in 'colour' alone")]
    public void Page_OfWhatThereIsNot_SaysWhy(string query, string expected) =>
        Assert.Contains(expected, shelf.Open<ComparePage>(this, query).Find("p.caution").TextContent, StringComparison.Ordinal);

    [Fact]
    public void Page_OfAFactor_SaysWhatEachLevelCosts()
    {
        var page = shelf.Open<ComparePage>(this, "?factor=link");
        Assert.Contains("dongle against usb", page.Find(".written").TextContent, StringComparison.Ordinal);
        Assert.Single(page.FindAll("figure"));
    }

    [Fact]
    public async Task Matrix_ByArrowKeys_IsOneStopThatMoves()
    {
        var page = shelf.Open<ComparePage>(this);
        string Stop() => Assert.Single(page.FindAll(".grid a"), link => link.GetAttribute("tabindex") == "0").GetAttribute("title")!.Split(':')[0];
        Assert.Equal($"{StoredStudy.Quick} against {StoredStudy.Reference}", Stop());
        await page.Find(".scroll[aria-label='All pairs']").KeyDownAsync(new KeyboardEventArgs { Key = "ArrowDown" });
        Assert.Equal($"{StoredStudy.Slow} against {StoredStudy.Reference}", Stop());
        await page.Find(".scroll[aria-label='All pairs']").KeyDownAsync(new KeyboardEventArgs { Key = "ArrowRight" });
        Assert.Equal($"{StoredStudy.Slow} against {StoredStudy.Quick}", Stop());
        await page.Find(".scroll[aria-label='All pairs']").KeyDownAsync(new KeyboardEventArgs { Key = "ArrowRight" });
        Assert.Equal($"{StoredStudy.Slow} against {StoredStudy.Quick}", Stop());
    }
}
