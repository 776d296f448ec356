using Bunit;
using Tarry.Web.Pages;
using Tarry.Web.Shelf;

namespace Tarry.Web.Tests.Pages;

public sealed class ShelfPageTests : IDisposable
{
    private readonly PageContext context = new();

    [Fact]
    public void Shelf_OfAnEmptyFolder_ShowsTheFirstSteps()
    {
        var page = context.Render<ShelfPage>();
        page.WaitForElement(".empty");
        Assert.Contains(page.FindAll("a"), link => link.GetAttribute("href") == "new");
        Assert.Equal("Make the demonstration", page.Find(".empty button").TextContent);
    }

    [Fact]
    public async Task Demonstration_WhenMade_ShowsHowFarItIsAndThenTheStudy()
    {
        using var goOn = new SemaphoreSlim(0);
        context.MakeDemonstration = (folder, show, stop) =>
        {
            Studies.Study.Create(folder, "The demonstration", null, 0.5);
            show(3, 48);
            goOn.Wait(stop);
        };
        var page = context.Render<ShelfPage>();
        var making = page.WaitForElement(".empty button").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("session 4 of 48", page.Find(".working").TextContent, StringComparison.Ordinal));
        goOn.Release();
        await making;
        page.WaitForAssertion(() => Assert.Equal("The demonstration", Assert.Single(page.FindAll("tbody th a")).TextContent));
        Assert.Empty(page.FindAll(".working"));
    }

    [Fact]
    public async Task Demonstration_WhenStopped_LeavesNothing()
    {
        context.MakeDemonstration = (folder, show, stop) =>
        {
            Studies.Study.Create(folder, "Half", null, 0.5);
            show(1, 48);
            stop.WaitHandle.WaitOne();
            stop.ThrowIfCancellationRequested();
        };
        var page = context.Render<ShelfPage>();
        var making = page.WaitForElement(".empty button").ClickAsync();
        await page.WaitForElement(".working button").ClickAsync();
        await making;
        page.WaitForElement(".empty button");
        Assert.Empty(Directory.EnumerateFileSystemEntries(context.Folder));
    }

    [Fact]
    public void Shelf_WithStudies_ShowsWhatIsInThem()
    {
        var study = context.Study("pads", "Three pads", PageContext.Condition("quill-usb"), PageContext.Condition("quill-radio", link: "radio", layer: "remapper"));
        PageContext.Capture(study, "2026-11-03", "quill-usb", 1_200);
        PageContext.Capture(study, "2026-11-17", "quill-usb", 34);
        var page = context.Render<ShelfPage>();
        var row = page.WaitForElement("tbody tr");
        Assert.Contains("Three pads", row.TextContent, StringComparison.Ordinal);
        string[] cells = [.. row.QuerySelectorAll("td").Select(cell => cell.TextContent.Trim().Replace('\u00a0', ' '))];
        Assert.Equal(["3 to 17 Nov 2026as sittings are named", "Quill 2", "usb, radio", "none, remapper", "2", "2", "1,234"], cells);
    }

    [Fact]
    public void Shelf_WithAStudyThatCannotBeRead_SaysWhyAndWhatToDo()
    {
        context.Study("sound", "Sound");
        Directory.CreateDirectory(Path.Combine(context.Folder, "broken"));
        File.WriteAllText(Path.Combine(context.Folder, "broken", "study.toml"), "title = \n");
        var page = context.Render<ShelfPage>();
        var cell = page.WaitForElement(".unreadable");
        Assert.Contains("study.toml line 1", cell.TextContent, StringComparison.Ordinal);
        Assert.Contains("What to do", cell.TextContent, StringComparison.Ordinal);
        Assert.Equal(2, page.FindAll("tbody tr").Count);
    }

    [Fact]
    public void Shelf_WithHostileNames_ShowsThemAsTextAndCutsThem()
    {
        var title = "<script>alert(1)</script>\u202E " + new string('x', 300) + " \U0001F600";
        context.Study("odd", title, PageContext.Condition("a", "<img src=x onerror=alert(1)>"));
        var page = context.Render<ShelfPage>();
        var row = page.WaitForElement("tbody tr");
        Assert.Empty(page.FindAll("tbody script, tbody img"));
        Assert.DoesNotContain("\u202E", row.TextContent, StringComparison.Ordinal);
        Assert.Contains("<script>alert(1)</script>", row.QuerySelector("th a")!.TextContent, StringComparison.Ordinal);
        Assert.True(row.QuerySelector("th a")!.TextContent.Length <= 125);
    }

    [Fact]
    public async Task Shelf_AfterAWordIsTyped_PutsItIntoTheAddressAndShowsWhatFits()
    {
        context.Study("pads", "Three pads", PageContext.Condition("quill-usb"));
        context.Study("sticks", "Two sticks", PageContext.Condition("sedge", "Sedge", "dongle"));
        var page = context.Render<ShelfPage>();
        await page.WaitForElement("#q").InputAsync(new() { Value = "sedge" });
        page.WaitForAssertion(() => Assert.Equal("?q=sedge", context.Address));
        page.WaitForAssertion(() => Assert.Equal("Two sticks", Assert.Single(page.FindAll("tbody th a")).TextContent));
    }

    [Fact]
    public void Shelf_AtAnAddressWithASearch_ShowsItsAnswerAndOffersTheWayBack()
    {
        context.Study("pads", "Three pads", PageContext.Condition("quill-usb"));
        context.GoTo("?device=Nothing");
        var page = context.Render<ShelfPage>();
        page.WaitForElement(".empty");
        Assert.Contains("0 of 1", page.Find(".tally").TextContent.Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.Contains(page.FindAll(".empty a"), link => link.GetAttribute("href") == "");
    }

    public void Dispose() => context.Dispose();
}
