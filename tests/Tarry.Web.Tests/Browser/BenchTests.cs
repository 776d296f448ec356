using System.Globalization;
using Microsoft.Playwright;
using Tarry.Studies;
using Tarry.Web.Tests.Bench;

namespace Tarry.Web.Tests.Browser;

/// <summary>A run from the browser, through all that happens to windows and programs.</summary>
[Collection(BrowserCollection.Name)]
public sealed class BenchTests(Chromium chromium) : IAsyncLifetime
{
    private static readonly LocatorAssertionsToContainTextOptions Patiently = new() { Timeout = 20_000 };
    private readonly BenchStudy bench = new();
    private ServedFolder? served;

    public async ValueTask InitializeAsync() => served = await ServedFolder.Start(bench.ShelfFolder);

    public async ValueTask DisposeAsync()
    {
        await served!.DisposeAsync();
        bench.Dispose();
    }

    [Fact]
    public async Task Run_ByKeyboardPausedAndClosed_IsFoundAgainAlikeInTwoWindowsAndGoesOn()
    {
        await using (var window = await chromium.Open())
        {
            await window.GoTo(At("bench?study=pads&sitting=monday&condition=quill-usb"));
            await FillIn(window.Page, pace: "20", trials: 600);
            await Press(window.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }));
            await Captured(window.Page, atLeast: 40);
            await Press(window.Page.GetByRole(AriaRole.Button, new() { Name = "Pause" }));
            await Assertions.Expect(Standing(window.Page)).ToContainTextAsync("Paused", Patiently);
        }

        await using var first = await chromium.Open();
        await using var second = await chromium.Open();
        await first.GoTo(At("bench"));
        await second.GoTo(At("bench?study=pads"));
        var captured = await Captured(first.Page, atLeast: 40);
        Assert.Equal(captured, await Captured(second.Page, atLeast: 40));
        await Press(second.Page.GetByRole(AriaRole.Button, new() { Name = "Go on" }).First);
        await Assertions.Expect(Standing(first.Page)).ToContainTextAsync("Sealed", Patiently);
        await Assertions.Expect(Standing(second.Page)).ToContainTextAsync("Sealed", Patiently);
        Assert.Equal(600, await Captured(first.Page, atLeast: 600));
        Assert.Equal(600, await Captured(second.Page, atLeast: 600));
        var session = bench.Open().Read(BenchStudy.Key);
        Assert.True(session.Sealed);
        Assert.Equal(Enumerable.Range(1, 600).Select(sequence => (long)sequence), session.Trials.Select(trial => trial.Sequence));
    }

    [Fact]
    public async Task Run_ProgramKilledInMidRun_GoesOnWithOneClickAndNothingIsLost()
    {
        await using var window = await chromium.Open();
        window.ExpectsLostConnection = true;
        await window.GoTo(At("bench?study=pads&sitting=monday&condition=quill-usb"));
        await FillIn(window.Page, pace: "20", trials: 500);
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await Captured(window.Page, atLeast: 60);
        await served!.Kill();
        var shown = await Captured(window.Page, atLeast: 60);
        var kept = Study.Open(bench.Folder).Read(BenchStudy.Key).Trials;
        Assert.True(kept.Count >= shown, $"{shown} were shown as captured, and {kept.Count} are on the disk.");

        await served.DisposeAsync();
        served = await ServedFolder.Start(bench.ShelfFolder);
        await window.GoTo(At("bench?study=pads"));
        var goOn = window.Page.GetByRole(AriaRole.Button, new() { Name = "Go on with monday.quill-usb" });
        await goOn.WaitForAsync();
        await window.IsAccessible();
        await goOn.ClickAsync();
        await Assertions.Expect(Standing(window.Page)).ToContainTextAsync("Sealed", Patiently);
        var session = bench.Open().Read(BenchStudy.Key);
        Assert.True(session.Sealed);
        Assert.Equal(Enumerable.Range(1, 500).Select(sequence => (long)sequence), session.Trials.Select(trial => trial.Sequence));
        Assert.Equal(kept, session.Trials.Take(kept.Count));
    }

    [Fact]
    public async Task Run_WindowLosesItsConnection_GoesOnAndIsShownAgain()
    {
        await using var window = await chromium.Open();
        window.ExpectsLostConnection = true;
        await window.GoTo(At("bench?study=pads&sitting=monday&condition=quill-usb"));
        await FillIn(window.Page, pace: "20", trials: 100_000);
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        var before = await Captured(window.Page, atLeast: 20);
        await window.Page.Context.SetOfflineAsync(true);
        await Assertions.Expect(Standing(window.Page)).ToContainTextAsync("Capturing");
        await using (var other = await chromium.Open())
        {
            await other.GoTo(At("bench?study=pads"));
            await Captured(other.Page, atLeast: before + 100);
        }

        await window.Page.Context.SetOfflineAsync(false);
        await window.GoTo(At("bench?study=pads"));
        await Captured(window.Page, atLeast: before + 100);
        await window.IsAccessible();
        await window.FitsItsWidth();
        await window.Page.SetViewportSizeAsync(360, 800);
        await window.FitsItsWidth();
    }

    [Fact]
    public async Task Run_SettingsThatCannotBe_IsRefusedBesideTheForm()
    {
        await using var window = await chromium.Open();
        await window.GoTo(At("bench?study=pads&sitting=monday&condition=quill-usb"));
        await FillIn(window.Page, pace: "20", trials: 0);
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await Assertions.Expect(window.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Ask for 1 to 4294967294.");
        await window.IsAccessible();
    }

    [Fact]
    public async Task Sitting_WithAnOrder_IsWorkedThroughStepByStep()
    {
        await File.WriteAllTextAsync(
            Path.Combine(bench.Folder, "order.csv"),
            "sitting,step,condition,is_reference,trials,seed,command\r\nmonday,1,quill-usb,false,60,11,x\r\nmonday,2,bench-board,true,60,12,\"x, y\"\r\ntuesday,1,bench-board,true,60,13,x\r\n",
            TestContext.Current.CancellationToken);
        await using var window = await chromium.Open();
        await window.GoTo(At("bench?study=pads&sitting=monday"));
        await window.Page.GetByLabel("Pace").SelectOptionAsync("0");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Begin step 1: quill-usb" }).ClickAsync();
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Begin step 2: bench-board" }).ClickAsync(new() { Timeout = 20_000 });
        await Assertions.Expect(window.Page.GetByRole(AriaRole.Heading, new() { Name = "Sitting monday: 2 of 2 done" })).ToBeVisibleAsync(new() { Timeout = 20_000 });
        await window.IsAccessible();
        await window.Page.GetByRole(AriaRole.Link, new() { Name = "Go to tuesday" }).ClickAsync();
        await Assertions.Expect(window.Page.GetByRole(AriaRole.Button, new() { Name = "Begin step 1: bench-board" })).ToBeEnabledAsync();
        Assert.Equal(12u, bench.Open().Read(new("monday", "bench-board")).Record.Run!.Seed);
    }

    private static ILocator Standing(IPage page) => page.Locator(".standing");

    private static async Task FillIn(IPage page, string pace, long trials)
    {
        await page.GetByLabel("Port").SelectOptionAsync("simulated");
        await page.GetByLabel("Pace").SelectOptionAsync(pace);
        var field = page.GetByLabel("Trials", new() { Exact = true });
        await field.EvaluateAsync("element => element.removeAttribute('min')");
        await field.FillAsync(trials.ToString(CultureInfo.InvariantCulture));
        await field.BlurAsync();
    }

    /// <summary>Presses a button without a pointer.</summary>
    private static async Task Press(ILocator button)
    {
        await button.FocusAsync();
        await Assertions.Expect(button).ToBeFocusedAsync();
        await button.PressAsync("Enter");
    }

    /// <summary>How many trials a window shows as captured, once they are so many.</summary>
    private static async Task<long> Captured(IPage page, long atLeast)
    {
        var field = page.Locator(".captured");
        var limit = TimeProvider.System.GetTimestamp();
        while (true)
        {
            var text = await field.TextContentAsync(new() { Timeout = 20_000 });
            if (long.TryParse(text, NumberStyles.AllowThousands, CultureInfo.InvariantCulture, out var captured) && captured >= atLeast)
            {
                return captured;
            }

            Assert.True(TimeProvider.System.GetElapsedTime(limit) < TimeSpan.FromSeconds(20), $"The window shows '{text}' and not {atLeast} yet.");
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }
    }

    private Uri At(string page) => new(served!.Address, page);
}
