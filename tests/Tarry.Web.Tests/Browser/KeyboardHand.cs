using Microsoft.Playwright;

namespace Tarry.Web.Tests.Browser;

/// <summary>A user with nothing but a keyboard: whatever is to be used must be reached with the tabulator, and be seen to have the focus.</summary>
internal sealed class KeyboardHand(IPage page) : IHand
{
    private const int MostSteps = 120;

    public async Task Press(ILocator control)
    {
        await GoTo(control);
        await page.Keyboard.PressAsync("Enter");
    }

    public async Task Write(ILocator field, string text)
    {
        await GoTo(field);
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.TypeAsync(text);
        await page.Keyboard.PressAsync("Tab");
    }

    public async Task Choose(ILocator list, string option)
    {
        await GoTo(list);
        await page.Keyboard.TypeAsync(option);
        await page.Keyboard.PressAsync("Tab");
        Assert.Equal(option, await list.Locator("option:checked").TextContentAsync());
    }

    public async Task Tick(ILocator box, bool isOn)
    {
        if (await box.IsCheckedAsync(new() { Timeout = 20_000 }) != isOn)
        {
            await GoTo(box);
            await page.Keyboard.PressAsync("Space");
        }
    }

    private async Task GoTo(ILocator control)
    {
        await control.WaitForAsync(new() { Timeout = 20_000 });
        await Assertions.Expect(control).ToBeEnabledAsync(new() { Timeout = 20_000 });
        for (var step = 0; step < MostSteps; step++)
        {
            if (await control.EvaluateAsync<bool>("element => element === document.activeElement"))
            {
                var outline = await control.EvaluateAsync<string>("element => getComputedStyle(element).outlineStyle");
                Assert.True(outline != "none", $"{control} has the focus, and nothing shows it.");
                return;
            }

            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"{control} was not reached with the tabulator.");
    }
}
