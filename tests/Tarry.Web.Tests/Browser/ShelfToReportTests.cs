using Microsoft.Playwright;
using Tarry.Studies;

namespace Tarry.Web.Tests.Browser;

/// <summary>From an empty shelf to a report, by keyboard and by dropping a file, in a real browser.</summary>
[Collection(BrowserCollection.Name)]
public sealed class ShelfToReportTests(Chromium chromium) : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("tarry-desk-").FullName;
    private ServedFolder? served;

    [Fact]
    public async Task Study_MadeByKeyboard_TakesADroppedFileAndIsPublished()
    {
        await using var window = await chromium.Open();
        var page = window.Page;
        await window.GoTo(served!.Address);
        await IsAt(page, "Shelf");
        await page.GetByRole(AriaRole.Link, new() { Name = "New study", Exact = true }).PressAsync("Enter");
        await IsAt(page, "New study");
        await page.Locator("#title").FocusAsync();
        await page.Keyboard.TypeAsync("Two pads");
        await page.Keyboard.PressAsync("Enter");
        await IsAt(page, "Set-up");
        Assert.Equal("Two pads", Study.Open(Path.Combine(folder, "two-pads")).File.Title);

        await page.GetByRole(AriaRole.Link, new() { Name = "Import", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator(".drop[data-listens]")).ToBeVisibleAsync();
        await Drop(page, ("monday.csv", Rows("monday")), ("tuesday.csv", Rows("tuesday")));
        await Assertions.Expect(page.Locator(".imported")).ToHaveCountAsync(2);
        await Assertions.Expect(page.Locator("#preview-heading")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".refused").First).ToContainTextAsync("monday.csv line 2");
        Assert.Empty(Study.Open(Path.Combine(folder, "two-pads")).SessionKeys);
        await window.IsAccessible();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the study" }).PressAsync("Enter");
        await Assertions.Expect(page.Locator(".kept")).ToContainTextAsync("Kept: 160 in 4");

        await page.GetByRole(AriaRole.Link, new() { Name = "Publish", Exact = true }).ClickAsync();
        await page.Locator("#with-figures").UncheckAsync(new() { Timeout = 20_000 });
        await page.Locator("#notes").FillAsync("<script>alert(1)</script>");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it" }).ClickAsync();
        await Assertions.Expect(page.Locator(".files a").Nth(1)).ToHaveTextAsync("report.html", new() { Timeout = 20_000 });
        var opened = await page.RunAndWaitForPopupAsync(() => page.Locator(".files a").Nth(1).ClickAsync());
        await Assertions.Expect(opened.Locator("#notes")).ToContainTextAsync("<script>alert(1)</script>");
    }

    [Fact]
    public async Task Shelf_OfHostileNames_StaysSound()
    {
        foreach (var (name, title) in new[]
        {
            ("one", "<script>alert('title')</script>"), ("two", new string('W', 300)), ("three", "\u202Eright to left \U0001F600 \u05D0\u05D1\u05D2"), ("four/<b>four</b>", "A folder of odd name"),
        })
        {
            Study.Create(Path.Combine(folder, name), title, null, 0.5);
        }

        Directory.CreateDirectory(Path.Combine(folder, "broken"));
        await File.WriteAllTextAsync(Path.Combine(folder, "broken", "study.toml"), "title = <script>\n", TestContext.Current.CancellationToken);
        await using var window = await chromium.Open(width: 360);
        await window.GoTo(served!.Address);
        await Assertions.Expect(window.Page.Locator("tbody tr")).ToHaveCountAsync(5);
        await window.FitsItsWidth();
        await window.IsAccessible();
        await window.Page.SetViewportSizeAsync(1280, 900);
        await window.FitsItsWidth();
        await window.Page.GetByRole(AriaRole.Link, new() { Name = "A folder of odd name" }).ClickAsync();
        await Assertions.Expect(window.Page.GetByRole(AriaRole.Heading, new() { Name = "Set-up" })).ToBeVisibleAsync();
    }

    public async ValueTask InitializeAsync() => served = await ServedFolder.Start(folder);

    public async ValueTask DisposeAsync()
    {
        await served!.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    // A page that is gone to puts the focus on its heading; whoever moves it before that loses it.
    private static Task IsAt(IPage page, string heading) =>
        Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = heading, Level = 1 })).ToBeFocusedAsync(new() { Timeout = 20_000 });

    private static async Task Drop(IPage page, params (string Name, string Content)[] files)
    {
        var transfer = await page.EvaluateHandleAsync(
            "files => { const dropped = new DataTransfer(); for (const [name, content] of files) dropped.items.add(new File([content], name)); return dropped; }",
            files.Select(file => new[] { file.Name, file.Content }).ToArray());
        await page.DispatchEventAsync(".drop", "drop", new { dataTransfer = transfer });
    }

    private static string Rows(string sitting)
    {
        var rows = from condition in (string[])["bench-board", "quill-usb"]
                   from number in Enumerable.Range(1, 40)
                   select $"{condition},{sitting},{number},{number * 100_000},{(condition == "quill-usb" ? 8_000 : 2_000) + (number * 37 % 100 * 10)}";
        return $"condition,sitting,seq,press_time_us,latency_us\nquill-usb,{sitting},1000,0,soon\n" + string.Join('\n', rows) + "\n";
    }
}
