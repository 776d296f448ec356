using Microsoft.Playwright;
using Tarry.Tests;

namespace Tarry.Web.Tests.Browser;

/// <summary>
/// The pictures of the tour: made anew here, so that none shows a page that is no more. <c>docs/pictures/make</c> keeps them;
/// without it they go to a folder that is gone after the test.
/// </summary>
[Collection(BrowserCollection.Name)]
public sealed class TourPicturesTests(Chromium chromium, DemoShelf shelf) : IDisposable
{
    private const string FolderVariable = "TARRY_TOUR_PICTURES";
    private const int FewestBytes = 15_000;

    private static readonly (string Name, string Page, int Width, int Height, ColorScheme Scheme)[] Pictures =
    [
        ("shelf", "", 1280, 420, ColorScheme.Light),
        ("new", "new", 1280, 560, ColorScheme.Light),
        ("setup", $"study/{DemoShelf.Study}/setup", 1280, 900, ColorScheme.Light),
        ("plan", $"study/{DemoShelf.Study}/plan", 1280, 900, ColorScheme.Light),
        ("proof", "bench/proof", 1280, 800, ColorScheme.Light),
        ("target", "target", 1280, 800, ColorScheme.Light),
        ("import", $"study/{DemoShelf.Study}/import", 1280, 700, ColorScheme.Light),
        ("standing", $"study/{DemoShelf.Study}/standing", 1280, 1000, ColorScheme.Light),
        ("standing-phone", $"study/{DemoShelf.Study}/standing", 360, 800, ColorScheme.Dark),
        ("condition", $"study/{DemoShelf.Study}/condition/quill-radio", 1280, 1000, ColorScheme.Light),
        ("compare", $"study/{DemoShelf.Study}/compare?a=quill-usb&b=quill-dongle", 1280, 1000, ColorScheme.Dark),
        ("factor", $"study/{DemoShelf.Study}/compare?factor=layer", 1280, 900, ColorScheme.Light),
        ("play", $"study/{DemoShelf.Study}/play", 1280, 1000, ColorScheme.Light),
        ("sticks", $"study/{DemoShelf.Study}/sticks", 1280, 1000, ColorScheme.Light),
        ("quality", $"study/{DemoShelf.Study}/quality", 1280, 1000, ColorScheme.Light),
        ("publish", $"study/{DemoShelf.Study}/publish", 1280, 1000, ColorScheme.Light),
    ];

    private readonly TemporaryFolder temporary = new();

    public static TheoryData<string> Names => [.. Pictures.Select(picture => picture.Name)];

    private string Folder => Environment.GetEnvironmentVariable(FolderVariable) ?? temporary.Path;

    public void Dispose() => temporary.Dispose();

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Picture_OfAPage_IsMadeAndStandsInTheTour(string name)
    {
        var picture = Pictures.Single(picture => picture.Name == name);
        await using var window = await chromium.Open(picture.Width, picture.Height, picture.Scheme);
        await window.GoTo(shelf.At(picture.Page));
        await Assertions.Expect(window.Page.Locator(".working")).ToHaveCountAsync(0, new() { Timeout = 30_000 });
        await Keep(window.Page, name);
    }

    [Fact]
    public async Task Picture_OfARun_IsMadeAndStandsInTheTour()
    {
        using var bench = new Bench.BenchStudy();
        await using var served = await ServedFolder.Start(bench.ShelfFolder);
        await using var window = await chromium.Open(height: 1000);
        await window.GoTo(new Uri(served.Address, "bench?study=pads&sitting=monday&condition=quill-usb"));
        await window.Page.GetByLabel("Port").SelectOptionAsync("simulated");
        await window.Page.GetByLabel("Pace").SelectOptionAsync("20");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await Assertions.Expect(window.Page.Locator(".captured")).ToHaveTextAsync(new System.Text.RegularExpressions.Regex("^[3-9][0-9][0-9]$|,"), new() { Timeout = 30_000 });
        await Keep(window.Page, "bench");
    }

    [Fact]
    public async Task Picture_OfAStickBeingRecorded_IsMadeAndStandsInTheTour()
    {
        using var bench = new Bench.BenchStudy();
        await using var served = await ServedFolder.Start(bench.ShelfFolder);
        await using var window = await chromium.Open(height: 720);
        await window.GoTo(new Uri(served.Address, "study/pads/sticks/record?condition=quill-usb&sitting=monday&procedure=rim-sweep"));
        await window.Page.GetByLabel("Read by").SelectOptionAsync("simulated");
        await window.Page.GetByLabel("Time to get ready").FillAsync("0");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await Assertions.Expect(window.Page.Locator(".left")).ToContainTextAsync("turn 2 of 5", new() { Timeout = 30_000 });
        await Keep(window.Page, "stick-record");
    }

    private async Task Keep(IPage page, string name)
    {
        var bytes = await page.ScreenshotAsync(new() { Path = Path.Combine(Folder, $"{name}.png"), Animations = ScreenshotAnimations.Disabled });
        Assert.True(bytes.Length > FewestBytes, $"The picture {name} has {bytes.Length} bytes: there is next to nothing on it.");
        var tour = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "docs", "tour.md"), TestContext.Current.CancellationToken);
        Assert.Contains($"](pictures/{name}.png)", tour, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(Repository.Root, "docs", "pictures", $"{name}.png")), $"docs/pictures/{name}.png is missing; docs/pictures/make makes it.");
    }
}
