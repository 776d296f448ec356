using Microsoft.Playwright;

namespace Tarry.Web.Tests.Browser;

/// <summary>Every page at every width, light and dark: nothing overflows, axe finds nothing, the console is silent, no request leaves the machine.</summary>
[Collection(BrowserCollection.Name)]
public class EveryPageTests(Chromium chromium, DemoShelf shelf)
{
    private static readonly string[] Pages =
    [
        "", "?device=Nothing", "new", "not-there",
        $"bench?study={DemoShelf.Study}", "bench/proof", "target",
        $"study/{DemoShelf.Study}/setup", $"study/{DemoShelf.Study}/setup?change=quill-usb", $"study/{DemoShelf.Study}/import",
        $"study/{DemoShelf.Study}/standing", $"study/{DemoShelf.Study}/standing?sort=p99&link=usb",
        $"study/{DemoShelf.Study}/condition/quill-dongle", $"study/{DemoShelf.Study}/condition/sedge-dongle?aside=thursday",
        $"study/{DemoShelf.Study}/compare", $"study/{DemoShelf.Study}/compare?a=quill-usb&b=quill-dongle", $"study/{DemoShelf.Study}/compare?factor=layer",
        $"study/{DemoShelf.Study}/play", $"study/{DemoShelf.Study}/sticks", $"study/{DemoShelf.Study}/sticks/record", $"study/{DemoShelf.Study}/sticks/record?procedure=substitution", $"study/{DemoShelf.Study}/quality",
        $"study/{DemoShelf.Study}/plan", $"study/{DemoShelf.Study}/publish",
    ];

    private static readonly int[] Widths = [360, 1280, 2560];

    public static TheoryData<string> All => [.. Pages];

    [Theory]
    [MemberData(nameof(All))]
    public async Task Page_AtEveryWidthInLightAndDark_FitsAndIsAccessible(string page)
    {
        foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await using var window = await chromium.Open(scheme: scheme);
            window.ExpectsNotFound = page == "not-there";
            await window.GoTo(shelf.At(page));
            await Assertions.Expect(window.Page.Locator(".working")).ToHaveCountAsync(0, new() { Timeout = 30_000 });
            foreach (var width in Widths)
            {
                await window.Page.SetViewportSizeAsync(width, 900);
                await window.FitsItsWidth();
            }

            await window.Page.SetViewportSizeAsync(Widths[0], 900);
            await window.IsAccessible();
            await window.Page.SetViewportSizeAsync(Widths[1], 900);
            await window.IsAccessible();
        }
    }
}
