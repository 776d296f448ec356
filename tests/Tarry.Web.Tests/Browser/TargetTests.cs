using Microsoft.Playwright;

namespace Tarry.Web.Tests.Browser;

[Collection(BrowserCollection.Name)]
public sealed class TargetTests(Chromium chromium, DemoShelf shelf)
{
    [Fact]
    public async Task Patch_BeforeItsCautionIsRead_IsNotThereAtAnyVisit()
    {
        await using var window = await chromium.Open();
        await window.GoTo(shelf.At("target?by=key"));
        await Assertions.Expect(window.Page.Locator("canvas")).ToHaveCountAsync(0);
        await Show(window.Page);
        await window.IsAccessible();
        await window.GoTo(shelf.At("target?by=key"));
        await Assertions.Expect(window.Page.Locator("canvas")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Patch_KeyHeld_IsLitWhileItLasts()
    {
        await using var window = await chromium.Open();
        await window.GoTo(shelf.At("target?by=key"));
        var patch = await Show(window.Page);
        Assert.Equal(0, await Brightness(patch));
        await window.Page.Keyboard.DownAsync("k");
        Assert.Equal(255, await Brightness(patch));
        await window.Page.Keyboard.UpAsync("k");
        Assert.Equal(0, await Brightness(patch));
    }

    [Fact]
    public async Task Patch_ToldByAProgram_Changes()
    {
        await using var window = await chromium.Open();
        await window.GoTo(shelf.At("target?by=program&mode=turn"));
        var patch = await Show(window.Page);

        // The stream is open a moment after the patch is there.
        for (var attempt = 0; await Brightness(patch) == 0; attempt++)
        {
            Assert.True(attempt < 50, "No press came through.");
            await Tell(window, "begun");
            await Task.Delay(100, TestContext.Current.CancellationToken);
            if (await Brightness(patch) == 0)
            {
                await Tell(window, "ended");
            }
        }

        await Tell(window, "ended");
        await Tell(window, "begun");
        await Assertions.Expect(window.Page.GetByText("Presses:")).ToBeVisibleAsync();
        Assert.Equal(0, await Brightness(patch));
    }

    [Fact]
    public async Task Patch_AboveTheFlashThreshold_IsRefused()
    {
        await using var window = await chromium.Open();
        await window.GoTo(shelf.At("target?by=key&interval_ms=70&width=300&height=300"));
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "I have read this: show the patch" }).ClickAsync();
        await Assertions.Expect(window.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("above the general flash threshold");
        await Assertions.Expect(window.Page.Locator("canvas")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Patch_LargeAndPressedFasterThanStated_ShowsThreeFlashesInASecondAndNoMore()
    {
        await using var window = await chromium.Open();
        await window.GoTo(shelf.At("target?by=key&interval_ms=500&width=300&height=300"));
        var patch = await Show(window.Page);
        var lit = 0;
        for (var press = 0; press < 5; press++)
        {
            await window.Page.Keyboard.DownAsync("k");
            lit += await Brightness(patch) == 255 ? 1 : 0;
            await window.Page.Keyboard.UpAsync("k");
        }

        // On a machine so slow that five presses take longer than a second there is nothing to withhold.
        await Assertions.Expect(window.Page.GetByText("Presses:")).ToContainTextAsync(lit == 5 ? "Presses: 5." : "were not shown");
        Assert.True(lit >= 3);
    }

    private static async Task<ILocator> Show(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "I have read this: show the patch" }).ClickAsync();
        var patch = page.Locator("canvas[data-listens]");
        await patch.WaitForAsync();
        return patch;
    }

    private static Task<int> Brightness(ILocator patch) =>
        patch.EvaluateAsync<int>("canvas => canvas.getContext('2d').getImageData(1, 1, 1, 1).data[0]");

    private async Task Tell(Window window, string what)
    {
        var answer = await window.Page.Context.APIRequest.PostAsync(shelf.At($"target/press?is={what}").ToString());
        Assert.Equal(204, answer.Status);
    }
}
