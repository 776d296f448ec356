using Microsoft.Playwright;

namespace Tarry.Web.Tests.Browser;

/// <summary>A user with a mouse.</summary>
internal sealed class MouseHand : IHand
{
    public Task Press(ILocator control) => control.ClickAsync(new() { Timeout = 20_000 });

    public async Task Write(ILocator field, string text)
    {
        await field.ClickAsync();
        await field.FillAsync(text);
        await field.BlurAsync();
    }

    public Task Choose(ILocator list, string option) => list.SelectOptionAsync(new SelectOptionValue { Label = option });

    public Task Tick(ILocator box, bool isOn) => box.SetCheckedAsync(isOn, new() { Timeout = 20_000 });
}
