using Microsoft.Playwright;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Tests.Browser;

/// <summary>The main job from an empty shelf to a published report: by mouse, and by keyboard alone.</summary>
[Collection(BrowserCollection.Name)]
public sealed class MainJobTests(Chromium chromium) : IAsyncLifetime
{
    private static readonly string[] Conditions = ["bench-board", "quill-usb"];
    private static readonly string[] Sittings = ["monday", "tuesday"];
    private readonly string folder = Directory.CreateTempSubdirectory("tarry-job-").FullName;
    private ServedFolder? served;

    [Theory]
    [InlineData("mouse")]
    [InlineData("keyboard")]
    public async Task Job_FromAnEmptyShelf_EndsInAReport(string means)
    {
        await using var window = await chromium.Open();
        var page = window.Page;
        IHand hand = means == "mouse" ? new MouseHand() : new KeyboardHand(page);
        await window.GoTo(served!.Address);
        await MakeStudy(page, hand);
        await DeclareConditions(page, hand);
        foreach (var sitting in Sittings)
        {
            foreach (var condition in Conditions)
            {
                await Capture(page, hand, sitting, condition);
            }
        }

        await hand.Press(Link(page, "Shelf"));
        await hand.Press(Link(page, "A pad and a board"));
        await HasHeading(page, "Standing");
        await hand.Press(Link(page, "quill-usb"));
        await HasHeading(page, "quill-usb");
        await hand.Press(Link(page, "See the two side by side"));
        await HasHeading(page, "Compare");
        await Assertions.Expect(page.Locator("#main")).ToContainTextAsync("quill-usb is slower than bench-board");
        await hand.Press(Link(page, "Publish"));
        await hand.Tick(page.Locator("#with-figures"), isOn: false);
        await hand.Press(Button(page, "Write it"));
        await Assertions.Expect(page.Locator(".files")).ToContainTextAsync("report.html", new() { Timeout = 30_000 });

        var study = Study.Open(Path.Combine(folder, "a-pad-and-a-board"));
        Assert.Equal(4, study.SessionKeys.Count(study.IsSealed));
        Assert.Equal(300, study.Read(new SessionKey("tuesday", "quill-usb")).Trials.Count);
        Assert.Contains("quill-usb", await File.ReadAllTextAsync(Path.Combine(study.Folder, "report", "report.html"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    public async ValueTask InitializeAsync() => served = await ServedFolder.Start(folder);

    public async ValueTask DisposeAsync()
    {
        await served!.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    private static async Task MakeStudy(IPage page, IHand hand)
    {
        await hand.Press(Link(page, "New study"));
        await HasHeading(page, "New study");
        await hand.Write(page.Locator("#title"), "A pad and a board");
        await hand.Write(page.Locator("#reference"), "bench-board");
        await hand.Press(Button(page, "Make the study"));
        await HasHeading(page, "Set-up");
    }

    private static async Task DeclareConditions(IPage page, IHand hand)
    {
        foreach (var (condition, rate) in Conditions.Zip((string[])["1000", "125"]))
        {
            await hand.Write(Field(page, "Name in this study"), condition);
            await hand.Write(Field(page, "Device"), condition == "quill-usb" ? "Quill 2" : "Bench board");
            await hand.Write(Field(page, "Stated report rate, reports/s"), rate);
            await hand.Press(Button(page, "Declare it"));
            await Assertions.Expect(page.GetByRole(AriaRole.Rowheader, new() { Name = condition })).ToBeVisibleAsync();
        }
    }

    private static async Task Capture(IPage page, IHand hand, string sitting, string condition)
    {
        await hand.Press(Link(page, "Bench"));
        await HasHeading(page, "Bench");
        await hand.Choose(List(page, "Study"), "A pad and a board");
        await hand.Choose(List(page, "Condition"), condition == "bench-board" ? "bench-board (reference)" : condition);
        await hand.Write(page.GetByLabel("Sitting"), sitting);
        await hand.Choose(List(page, "Port"), "simulated bench");
        await hand.Choose(List(page, "Pace"), "as fast as it goes");
        await hand.Write(page.GetByLabel("Trials", new() { Exact = true }), "300");
        await hand.Press(Button(page, "Begin"));
        await Assertions.Expect(page.Locator(".standing")).ToContainTextAsync("Sealed", new() { Timeout = 30_000 });
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = $"{sitting}.{condition}" })).ToBeVisibleAsync();
    }

    private static ILocator Link(IPage page, string name) => page.GetByRole(AriaRole.Link, new() { Name = name, Exact = true }).First;

    private static ILocator Field(IPage page, string name) => page.GetByRole(AriaRole.Textbox, new() { Name = name, Exact = true }).Or(page.GetByRole(AriaRole.Combobox, new() { Name = name, Exact = true }));

    private static ILocator List(IPage page, string name) => page.GetByRole(AriaRole.Combobox, new() { Name = name, Exact = true });

    private static ILocator Button(IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private static Task HasHeading(IPage page, string name) =>
        Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = name, Exact = true, Level = 1 })).ToBeVisibleAsync(new() { Timeout = 20_000 });
}
