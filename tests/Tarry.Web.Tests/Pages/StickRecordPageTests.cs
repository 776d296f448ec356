using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Web.Bench;
using Tarry.Web.Pages;
using Tarry.Web.Sticks;
using Tarry.Web.Tests.Bench;
using Tarry.Web.Tests.Sticks;

namespace Tarry.Web.Tests.Pages;

public sealed class StickRecordPageTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private readonly BenchStudy bench = new();
    private readonly BunitContext context = new();
    private readonly FakeDevice device = new(TimeProvider.System);
    private readonly LiveBench live;

    public StickRecordPageTests()
    {
        live = bench.Bench(device);
        context.Services.AddSingleton(bench.Desks);
        context.Services.AddSingleton<IBenchPorts>(device);
        context.Services.AddSingleton(live);
        context.SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        context.JSInterop.Mode = JSRuntimeMode.Loose;
    }

    public void Dispose()
    {
        context.Dispose();
        live.Dispose();
        device.Dispose();
        bench.Dispose();
    }

    [Fact]
    public void Page_StudyThatIsNotThere_SaysSo() =>
        Assert.Contains("no study of this name", Show("", "other").Markup, StringComparison.Ordinal);

    [Fact]
    public void Page_OfAnAddress_FillsInWhatItHoldsAndSaysHowItIsDone()
    {
        var page = Ready("?condition=quill-usb&sitting=monday&procedure=angle-stops");
        Assert.Equal("quill-usb", Named(page, "Condition").QuerySelector("select")!.GetAttribute("value"));
        Assert.Equal("monday", Named(page, "Sitting").QuerySelector("input")!.GetAttribute("value"));
        Assert.Contains("angular error", page.Find(".guide").TextContent, StringComparison.Ordinal);
        Assert.Contains("cut away from you", page.Find("form .caution").TextContent, StringComparison.Ordinal);
        Assert.Contains("degrees", Named(page, "Standard uncertainty").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Page_ForTheRig_WarnsOfWiringAndOfNoFlashes()
    {
        var care = Ready("").Find(".care").TextContent;
        Assert.Contains("5 V on a 3.3 V pad", care, StringComparison.Ordinal);
        Assert.DoesNotContain("flash", care, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Page_OfDevices_OffersThoseWithAStickAndSaysWhatCannotBeRead()
    {
        var page = Ready("");
        var choices = Named(page, "Read by").QuerySelectorAll("option").ToDictionary(option => option.GetAttribute("value")!, option => option.HasAttribute("disabled"));
        Assert.Equal(["", "simulated", "device:/dev/input/event7", "device:/dev/hidraw3"], choices.Keys);
        Assert.True(choices["device:/dev/hidraw3"]);
        Assert.False(choices["device:/dev/input/event7"]);
        Assert.Contains("may not be read by you", Named(page, "Read by").TextContent, StringComparison.Ordinal);
        await Select(page, "Read by", "device:/dev/input/event7");
        Assert.Empty(page.FindAll(".care"));
        Assert.Contains("as this computer gets them", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Begin_WithoutACondition_IsRefusedBesideTheForm()
    {
        var page = Ready("?sitting=monday");
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("No condition is chosen", page.Find(".fault").TextContent, StringComparison.Ordinal), Patience);
        Assert.Null(live.StickOf(BenchStudy.Name));
    }

    [Fact]
    public async Task Begin_OnTheSimulatedStick_SaysWhatWasSealedAndGoesOnToTheNextProcedure()
    {
        var page = Ready("?condition=quill-usb&sitting=monday&procedure=rest");
        await Select(page, "Pace", "0");
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Sealed", page.Find(".standing").TextContent, StringComparison.Ordinal), Patience);
        Assert.Contains("60,000\u00A0positions", page.Find(".said").TextContent, StringComparison.Ordinal);
        Assert.Contains("It has what its procedure needs", page.Find(".said").TextContent, StringComparison.Ordinal);
        Assert.Contains(page.FindAll(".said tbody th"), cell => cell.TextContent == "centre offset, x");
        Assert.Equal("study/pads/sticks", page.Find(".said a").GetAttribute("href"));
        page.WaitForAssertion(() => Assert.Equal("flick-release", Named(page, "Procedure").QuerySelector("select")!.GetAttribute("value")), Patience);
        Assert.Contains("rest (sealed)", Named(page, "Procedure").TextContent, StringComparison.Ordinal);
        await Button(page, "Put aside").ClickAsync();
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".recording")), Patience);
    }

    [Fact]
    public async Task Page_WhileItRecords_SaysWhatToDoForHowLongAndWhereTheStickIs()
    {
        var page = Ready("?condition=quill-usb&sitting=monday&procedure=rim-sweep");
        var run = live.Begin(new StickCard(BenchStudy.Name, new SessionKey("monday", "quill-usb", StickProcedure.RimSweep), SimulatedDefault.Port, new StickRecordingRequest(StickProcedure.RimSweep), 10));
        page.WaitForAssertion(() => Assert.Equal("Turn counter-clockwise along the gate, one turn in 6 s", page.Find(".prompt").TextContent), Patience);
        page.WaitForAssertion(() => Assert.Matches("turn [1-5] of 5", page.Find(".left").TextContent), Patience);
        Assert.Contains("Then: stop, and stay at the gate", page.Find(".then").TextContent, StringComparison.Ordinal);
        Assert.Contains("x from", page.Find("figure.trail figcaption").TextContent, StringComparison.Ordinal);
        Assert.StartsWith("M", page.Find("figure.trail .way").GetAttribute("d"), StringComparison.Ordinal);
        Assert.Contains("30 seconds", page.Find(".recording [role=status]").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("form"));

        await Button(page, "Discard").ClickAsync();
        Assert.Contains("removed for good", page.Find(".recording .caution").TextContent, StringComparison.Ordinal);
        await Button(page, "Discard it").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("Discarded", page.Find(".standing").TextContent, StringComparison.Ordinal), Patience);
        await run.Ended.WaitAsync(Patience, Xunit.TestContext.Current.CancellationToken);
        Assert.Empty(bench.Open().StickKeys);
    }

    [Fact]
    public async Task Page_InAnotherWindow_OffersTheNextProcedureOfWhatWasRecordedLast()
    {
        var run = live.Begin(new StickCard(BenchStudy.Name, new SessionKey("tuesday", "quill-usb", StickProcedure.Rest), SimulatedDefault.Port, new StickRecordingRequest(StickProcedure.Rest), null));
        await run.Ended.WaitAsync(Patience, Xunit.TestContext.Current.CancellationToken);
        var page = Ready("");
        Assert.Equal("quill-usb", Named(page, "Condition").QuerySelector("select")!.GetAttribute("value"));
        Assert.Equal("tuesday", Named(page, "Sitting").QuerySelector("input")!.GetAttribute("value"));
        Assert.Equal("flick-release", Named(page, "Procedure").QuerySelector("select")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Page_AfterACrash_SealsWhatTheRecordingHolds()
    {
        var key = new SessionKey("monday", "quill-usb", StickProcedure.Rest);
        Leave(key);
        var page = Ready("");
        await page.Find($"button[aria-label='Seal what it holds: {key}']").ClickAsync();
        page.WaitForAssertion(() => Assert.Contains("2\u00A0positions are sealed", page.Find(".said").TextContent, StringComparison.Ordinal), Patience);
        Assert.Contains("cut off", Assert.Single(bench.Open().ReadStick(key).Record.Refused).Reason, StringComparison.Ordinal);
        Assert.Contains("It lacks what its procedure needs", page.Find(".said").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".broken"));
    }

    [Fact]
    public async Task Page_AfterACrash_RemovesItOnlyWhenAskedTwice()
    {
        var key = new SessionKey("monday", "quill-usb", StickProcedure.Rest);
        var file = Leave(key);
        var page = Ready("");
        await page.Find($"button[aria-label='Remove: {key}']").ClickAsync();
        Assert.True(File.Exists(file));
        await Button(page, "Remove it").ClickAsync();
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".broken")), Patience);
        Assert.False(File.Exists(file));
        Assert.Empty(bench.Open().StickKeys);
    }

    [Fact]
    public async Task Begin_OfASessionThatBrokeOff_IsRefusedUntilItIsSealedOrRemoved()
    {
        Leave(new SessionKey("monday", "quill-usb", StickProcedure.Rest));
        var page = Ready("?condition=quill-usb&sitting=monday&procedure=rest");
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("broke off", page.Find(".fault").TextContent, StringComparison.Ordinal), Patience);
    }

    private string Leave(SessionKey key)
    {
        var file = StickCapture.FileOf(bench.Open(), key);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(
            file,
            "tarry-stick-recording 1 {\"procedure\":\"rest\",\"board\":\"uno\",\"firmware\":\"0.1.0\",\"boot_id\":7,\"tick_hz\":16000000,\"interval_us\":1000,\"reference\":\"aref\",\"y_is_down\":false}\n"
            + "s 1000 1 -\nr 1 1000 0 1ff2001fe201\nr 3 33000 0 2");
        return file;
    }

    private static AngleSharp.Dom.IElement Named(IRenderedComponent<StickRecordPage> page, string label) =>
        page.FindAll("label").First(found => found.TextContent.Trim().StartsWith(label, StringComparison.Ordinal));

    private static AngleSharp.Dom.IElement Button(IRenderedComponent<StickRecordPage> page, string text) =>
        page.FindAll("button").First(button => button.TextContent == text);

    private static Task Select(IRenderedComponent<StickRecordPage> page, string label, string value) =>
        Named(page, label).QuerySelector("select")!.ChangeAsync(new() { Value = value });

    private IRenderedComponent<StickRecordPage> Ready(string query)
    {
        var page = Show(query);
        page.WaitForElement("form", Patience);
        return page;
    }

    private IRenderedComponent<StickRecordPage> Show(string query, string study = BenchStudy.Name)
    {
        context.Services.GetRequiredService<NavigationManager>().NavigateTo($"study/{study}/sticks/record{query}");
        return context.Render<StickRecordPage>(parameters => parameters.Add(page => page.Study, study));
    }
}
