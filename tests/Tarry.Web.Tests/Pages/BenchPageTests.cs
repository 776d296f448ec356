using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Web.Bench;
using Tarry.Web.Pages;
using Tarry.Web.Shelf;
using Tarry.Web.Tests.Bench;

namespace Tarry.Web.Tests.Pages;

public sealed class BenchPageTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);
    private readonly BenchStudy bench = new();
    private readonly BunitContext context = new();
    private readonly LiveBench live;

    public BenchPageTests()
    {
        live = bench.Bench();
        context.Services.AddSingleton(bench.Options);
        context.Services.AddSingleton(bench.Shelf);
        context.Services.AddSingleton(bench.Desks);
        context.Services.AddSingleton(new StudySummaries(bench.Shelf, TimeProvider.System));
        context.Services.AddSingleton<IBenchPorts>(new BenchPorts(TimeProvider.System));
        context.Services.AddSingleton(live);
    }

    public void Dispose()
    {
        context.Dispose();
        live.Dispose();
        bench.Dispose();
    }

    [Fact]
    public void Page_NoStudy_SaysWhereToMakeOne()
    {
        Directory.Delete(bench.Folder, recursive: true);
        var page = Show("bench");
        page.WaitForAssertion(() => Assert.Contains("There is no study to capture into", page.Markup, StringComparison.Ordinal), Patience);
    }

    [Fact]
    public void Page_StudyThatIsNotThere_SaysSo()
    {
        var page = Show("bench?study=other");
        page.WaitForAssertion(() => Assert.Contains("no study other", page.Find(".fault").TextContent, StringComparison.Ordinal), Patience);
    }

    [Fact]
    public void Page_StudyFileWithAnError_SaysWhatToDo()
    {
        File.AppendAllText(Path.Combine(bench.Folder, "study.toml"), "\nmargin_ms = [\n");
        var page = Show("bench?study=pads");
        page.WaitForAssertion(() => Assert.NotEmpty(page.Find(".fault").TextContent), Patience);
    }

    [Fact]
    public void Page_AddressWithSittingAndCondition_FillsThemIn()
    {
        var page = Show("bench?study=pads&sitting=monday&condition=quill-usb");
        page.WaitForAssertion(() => Assert.Equal("monday", page.Find("input[list=sittings]").GetAttribute("value")), Patience);
        Assert.Equal("quill-usb", page.FindAll("select").Single(select => select.ParentElement!.TextContent.Contains("Condition", StringComparison.Ordinal)).GetAttribute("value"));
    }

    [Fact]
    public async Task Begin_WithoutACondition_IsRefusedBesideTheForm()
    {
        var page = Show("bench?study=pads&sitting=monday");
        await page.WaitForElement("form", Patience).SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("No condition is chosen", page.Find(".fault").TextContent, StringComparison.Ordinal), Patience);
        Assert.Empty(live.Runs);
    }

    [Fact]
    public async Task Begin_EchoOnTheSimulatedBench_IsCapturedAndSealed()
    {
        var page = Show("bench?study=pads&sitting=monday&condition=quill-usb");
        page.WaitForElement("form", Patience);
        await Select(page, "What answers", "echo");
        await Select(page, "Pace", "0");
        await page.FindAll("label").First(label => label.TextContent.Trim().StartsWith("Trials", StringComparison.Ordinal)).QuerySelector("input")!.ChangeAsync(new() { Value = "80" });
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Sealed", page.Find(".standing").TextContent, StringComparison.Ordinal), Patience);
        var session = bench.Open().Read(BenchStudy.Key);
        Assert.Equal((true, 80), (session.Sealed, session.Trials.Count));
        Assert.Contains(session.Record.Events, text => text.Contains("presses echoed", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Page_SessionWithoutItsTarget_FillsInTheSettingsAndAsks()
    {
        using (var held = bench.Open().AcquireLock("tests"))
        {
            var run = Rig.Runs.RunRequest.DefaultSettings with { HoldUs = 33_000 };
            bench.Open().Begin(held, new SessionRecord { Key = BenchStudy.Key, Segments = [new Segment(1, 1, 16_000_000, null)], Run = run, Battery = "half" }).Dispose();
        }

        var page = Show("bench?study=pads");
        await page.WaitForElement("button[aria-label='Go on with monday.quill-usb']", Patience).ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("held 33", page.Markup, StringComparison.Ordinal), Patience);
        Assert.Equal("Go on", page.Find("form button[type=submit]").TextContent);
        Assert.Empty(live.Runs);
    }

    [Fact]
    public async Task Page_AfterASession_FillsInWhatItsBenchWasLike()
    {
        var run = live.Begin(BenchStudy.Card(60) with { Asked = BenchStudy.Card(60).Asked with { Application = "a test patch", Run = Rig.Runs.RunRequest.DefaultSettings with { HoldUs = 31_000 } } });
        await run.Ended.WaitAsync(Patience, Xunit.TestContext.Current.CancellationToken);
        live.PutAway(run);
        var page = Show("bench?study=pads");
        page.WaitForAssertion(() => Assert.Contains("held 31", page.Markup, StringComparison.Ordinal), Patience);
        Assert.Contains(page.FindAll("input"), input => input.GetAttribute("value") == "a test patch");
        Assert.Equal("monday", page.Find("input[list=sittings]").GetAttribute("value"));
    }

    [Fact]
    public async Task Page_StudyFileThatBreaksDuringARun_KeepsTheRunInReach()
    {
        var run = live.Begin(BenchStudy.Card(null, speed: 1));
        await File.AppendAllTextAsync(Path.Combine(bench.Folder, "study.toml"), "\nmargin_ms = [\n", Xunit.TestContext.Current.CancellationToken);
        var page = Show("bench?study=pads");
        page.WaitForAssertion(() => Assert.NotEmpty(page.Find(".fault").TextContent), Patience);
        Assert.Contains("Pause", page.Find(".run").TextContent, StringComparison.Ordinal);
        await page.FindAll("button").Single(button => button.TextContent.Trim() == "Pause").ClickAsync();
        await run.Ended.WaitAsync(Patience, Xunit.TestContext.Current.CancellationToken);
    }

    [Fact]
    public void Page_OrderThatIsWrong_SaysWhichLine()
    {
        File.WriteAllText(Path.Combine(bench.Folder, "order.csv"), "sitting,step,condition\nmonday,x,quill-usb\n");
        var page = Show("bench?study=pads");
        page.WaitForAssertion(() => Assert.Contains("order.csv, line 2", page.Find(".fault").TextContent, StringComparison.Ordinal), Patience);
    }

    [Fact]
    public void Page_HostileNames_AreShownAsText()
    {
        using (var held = bench.Open().AcquireLock("tests"))
        {
            Study.Open(bench.Folder).AddCondition(held, new() { Id = "hostile", Factors = new Dictionary<string, string> { ["device"] = "<img src=x onerror=alert(1)>" } });
        }

        File.WriteAllText(Path.Combine(bench.Folder, "order.csv"), "sitting,step,condition\nmonday,1,hostile\n");
        var page = Show("bench?study=pads");
        page.WaitForAssertion(() => Assert.Contains("&lt;img src=x", page.Find(".order").InnerHtml, StringComparison.Ordinal), Patience);
        Assert.Empty(page.FindAll("img"));
    }

    // Awaited: an event that is still on its way when the page is drawn again finds no handler.
    private static Task Select(IRenderedComponent<BenchPage> page, string label, string value) =>
        page.FindAll("label").First(found => found.TextContent.Trim().StartsWith(label, StringComparison.Ordinal)).QuerySelector("select")!.ChangeAsync(new() { Value = value });

    private IRenderedComponent<BenchPage> Show(string address)
    {
        context.Services.GetRequiredService<NavigationManager>().NavigateTo(address);
        return context.Render<BenchPage>();
    }
}
