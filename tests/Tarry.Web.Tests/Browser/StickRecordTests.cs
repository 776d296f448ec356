using Microsoft.Playwright;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Web.Tests.Bench;

namespace Tarry.Web.Tests.Browser;

/// <summary>A stick recorded from the browser, with nothing but a keyboard, and through what happens to windows and programs.</summary>
[Collection(BrowserCollection.Name)]
public sealed class StickRecordTests(Chromium chromium) : IAsyncLifetime
{
    private static readonly LocatorAssertionsToContainTextOptions Patiently = new() { Timeout = 30_000 };
    private static readonly SessionKey Key = new("monday", "quill-usb", StickProcedure.RimSweep);
    private readonly BenchStudy bench = new();
    private ServedFolder? served;

    public async ValueTask InitializeAsync() => served = await ServedFolder.Start(bench.ShelfFolder);

    public async ValueTask DisposeAsync()
    {
        await served!.DisposeAsync();
        bench.Dispose();
    }

    [Fact]
    public async Task Record_ByKeyboardInAWindowThatIsClosed_IsFoundSealedAndInSticks()
    {
        await using (var window = await chromium.Open())
        {
            await Begin(window, "20 times real time");
            await Assertions.Expect(window.Page.Locator(".prompt")).ToContainTextAsync("Turn counter-clockwise along the gate", Patiently);
            await Assertions.Expect(window.Page.Locator(".left")).ToContainTextAsync("of 5", Patiently);
        }

        await using var other = await chromium.Open();
        await other.GoTo(At("study/pads/sticks/record"));
        await Assertions.Expect(other.Page.Locator(".standing")).ToHaveTextAsync("Sealed", new() { Timeout = 30_000 });
        await Assertions.Expect(other.Page.Locator(".said")).ToContainTextAsync("60,000 positions are sealed", Patiently);
        await other.IsAccessible();
        await other.FitsItsWidth();
        await new KeyboardHand(other.Page).Press(other.Page.GetByRole(AriaRole.Link, new() { Name = "What all recordings say together" }));
        await Assertions.Expect(other.Page.Locator("main")).ToContainTextAsync("gain difference", Patiently);
        Assert.Equal(60_000, bench.Open().ReadStick(Key).Samples.Count);
    }

    [Fact]
    public async Task Record_WatchedInTwoWindowsAtEveryWidth_IsAccessibleAndStopsInBoth()
    {
        await using var first = await chromium.Open();
        await using var second = await chromium.Open(360, 800, ColorScheme.Dark);
        await Begin(first, "real time", take: "0");
        await second.GoTo(At("study/pads/sticks/record"));
        await Assertions.Expect(second.Page.Locator(".prompt")).ToContainTextAsync("Turn counter-clockwise", Patiently);
        await Assertions.Expect(second.Page.Locator("figure.trail figcaption")).ToContainTextAsync("y from", Patiently);
        await first.IsAccessible();
        await second.IsAccessible();
        foreach (var window in new[] { first, second })
        {
            foreach (var width in new[] { 360, 1280, 2560 })
            {
                await window.Page.SetViewportSizeAsync(width, 900);
                await window.FitsItsWidth();
            }
        }

        await new KeyboardHand(second.Page).Press(second.Page.GetByRole(AriaRole.Button, new() { Name = "Stop and keep" }));
        foreach (var window in new[] { first, second })
        {
            await Assertions.Expect(window.Page.Locator(".standing")).ToContainTextAsync("Sealed before its last step", Patiently);
            await Assertions.Expect(window.Page.Locator(".said")).ToContainTextAsync("It lacks what its procedure needs", Patiently);
            await window.IsAccessible();
        }

        var sealedPositions = bench.Open().ReadStick(Key).Samples.Count;
        await Assertions.Expect(first.Page.Locator(".said")).ToContainTextAsync(sealedPositions.ToString("#,0", System.Globalization.CultureInfo.InvariantCulture), Patiently);
    }

    [Fact]
    public async Task Record_ProgramKilledInMidRecording_SealsWhatReachedTheDisk()
    {
        await using var window = await chromium.Open();
        window.ExpectsLostConnection = true;
        await Begin(window, "20 times real time");
        await Assertions.Expect(window.Page.Locator(".standing")).ToContainTextAsync("step 4 of 4", Patiently);
        await served!.Kill();
        Assert.Equal(Key, Assert.Single(StickCapture.BrokenOff(bench.Open())));

        await served.DisposeAsync();
        served = await ServedFolder.Start(bench.ShelfFolder);
        await window.GoTo(At("study/pads/sticks/record"));
        await window.IsAccessible();
        await new KeyboardHand(window.Page).Press(window.Page.GetByRole(AriaRole.Button, new() { Name = "Seal what it holds: monday.quill-usb.rim-sweep" }));
        await Assertions.Expect(window.Page.Locator(".said")).ToContainTextAsync("positions are sealed", Patiently);
        await window.IsAccessible();

        // The first turns, half a minute of them, were over when the program was killed.
        var session = bench.Open().ReadStick(Key);
        Assert.InRange(session.Samples.Count, 30_000, 60_000);
    }

    private async Task Begin(Window window, string pace, string take = "1")
    {
        await window.GoTo(At("study/pads/sticks/record"));
        var hand = new KeyboardHand(window.Page);
        await hand.Choose(window.Page.GetByLabel("Condition"), "quill-usb");
        await hand.Write(window.Page.GetByLabel("Sitting"), "monday");
        await hand.Choose(window.Page.GetByLabel("Procedure"), "rim-sweep");
        await hand.Choose(window.Page.GetByLabel("Read by"), "simulated stick");
        await hand.Choose(window.Page.GetByLabel("Pace"), pace);
        await hand.Write(window.Page.GetByLabel("Time to get ready"), take);
        await hand.Press(window.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }));
    }

    private Uri At(string page) => new(served!.Address, page);
}
