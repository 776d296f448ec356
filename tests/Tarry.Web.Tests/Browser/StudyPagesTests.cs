using Microsoft.Playwright;
using Tarry.Tests;
using static Microsoft.Playwright.Assertions;

namespace Tarry.Web.Tests.Browser;

/// <summary>From the standing to the evidence and back, by hand and by keyboard, in the browser; and what is changed there.</summary>
[Collection(BrowserCollection.Name)]
public sealed class StudyPagesTests(Chromium chromium, DemoShelf shelf)
{
    private static readonly LocatorAssertionsToBeVisibleOptions Patience = new() { Timeout = 60_000 };

    [Fact]
    public async Task Standing_ByClickAndByKeyboard_LeadsToTheEvidence()
    {
        await using var window = await chromium.Open();
        await window.GoTo(shelf.At($"study/{DemoShelf.Study}/standing"));
        await window.Page.GetByRole(AriaRole.Columnheader, new() { Name = "p95, ms" }).GetByRole(AriaRole.Link).ClickAsync();
        await Expect(window.Page.GetByText("Ranks and tie groups belong to the mean")).ToBeVisibleAsync();
        await window.Page.GetByLabel("link").SelectOptionAsync("dongle");
        await Expect(window.Page.GetByText("3 of 12 conditions")).ToBeVisibleAsync();
        await window.Page.ReloadAsync();
        await window.Ready();
        await Expect(window.Page.GetByText("3 of 12 conditions")).ToBeVisibleAsync();

        await window.Page.GetByRole(AriaRole.Link, new() { Name = "quill-dongle-5m" }).ClickAsync();
        await Expect(window.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("quill-dongle-5m");
        await window.Page.GoBackAsync();
        await Expect(window.Page.GetByText("3 of 12 conditions")).ToBeVisibleAsync();
        await window.Page.Locator("a[href$='condition/quill-dongle#late']").First.FocusAsync();
        await window.Page.Keyboard.PressAsync("Enter");
        await Expect(window.Page.Locator("#late-heading")).ToBeInViewportAsync();

        await window.Page.Locator("a[rel=next]").FocusAsync();
        await window.Page.Keyboard.PressAsync("Enter");
        await Expect(window.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("quill-dongle-5m");
    }

    [Fact]
    public async Task Pages_OfAStudy_AreOfferedInOneRowWhereItIsWide()
    {
        await using var window = await chromium.Open(width: 1280);
        await window.GoTo(shelf.At($"study/{DemoShelf.Study}/standing"));
        var tops = await window.Page.Locator(".study-pages a").EvaluateAllAsync<double[]>("links => links.map(link => link.getBoundingClientRect().top)");
        Assert.Equal(Desk.StudyPages.All.Count, tops.Length);
        Assert.Single(tops.Distinct());
    }

    [Fact]
    public async Task Compare_ChosenAndByArrowKeys_ShowsThePair()
    {
        await using var window = await chromium.Open();
        await window.GoTo(shelf.At($"study/{DemoShelf.Study}/compare"));
        await window.Page.Locator(".choices select").First.SelectOptionAsync("quill-usb");
        await window.Page.Locator(".choices select").Nth(1).SelectOptionAsync("quill-dongle");
        await Expect(window.Page.GetByText("quill-usb is faster than quill-dongle")).ToBeVisibleAsync();
        Assert.EndsWith("compare?a=quill-usb&b=quill-dongle", window.Page.Url, StringComparison.Ordinal);

        await window.Page.Locator(".grid a[tabindex='0']").FocusAsync();
        await window.Page.Keyboard.PressAsync("ArrowDown");
        await Expect(window.Page.Locator(".grid a:focus")).ToHaveAttributeAsync("title", new System.Text.RegularExpressions.Regex("^sedge-dongle against bench-board"));
        await window.Page.Keyboard.PressAsync("Enter");
        await Expect(window.Page.Locator(".verdict")).ToContainTextAsync("sedge-dongle is slower than bench-board");
    }

    [Fact]
    public async Task Exclusion_TriedKeptAndUndone_ChangesTheFindingsAndNothingElse()
    {
        using var stored = new StoredStudy();
        var file = Path.Combine(stored.Folder, "study.toml");
        var before = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        await using var served = await ServedFolder.Start(stored.Parent);
        await using var window = await chromium.Open();
        await window.GoTo(new Uri(served.Address, $"study/{StoredStudy.Name}/condition/{StoredStudy.Slow}"));
        await window.Page.Locator(".sessions tr", new() { HasText = "tuesday" }).GetByRole(AriaRole.Link).ClickAsync();
        await window.Page.GetByLabel("Reason").FillAsync("loose cable");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "See what it changes" }).ClickAsync();
        await Expect(window.Page.GetByText("Nothing is written yet")).ToBeVisibleAsync(Patience);
        Assert.Equal(before, await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));

        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Set it aside" }).ClickAsync();
        await Expect(window.Page.GetByText("tuesday.quill-dongle is set aside: loose cable.")).ToBeVisibleAsync(Patience);
        await Expect(window.Page.Locator(".lead")).ToContainTextAsync("quill-dongle is slower than bench-board");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(window.Page.Locator(".lead")).ToContainTextAsync("is undecided", new() { Timeout = 60_000 });
        Assert.Equal(before, await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
    }
}
