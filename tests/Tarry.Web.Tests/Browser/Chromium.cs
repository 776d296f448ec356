using Microsoft.Playwright;
using Tarry.Tests;

namespace Tarry.Web.Tests.Browser;

/// <summary>Debian's Chromium, started once for all tests.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] Arguments =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    private IPlaywright? playwright;

    /// <summary>The browser; null where it is not installed.</summary>
    public IBrowser? Browser { get; private set; }

    /// <summary>Opens a window whose faults fail the test: see <see cref="Window.DisposeAsync"/>.</summary>
    public async Task<Window> Open(int width = 1280, int height = 900, ColorScheme scheme = ColorScheme.Light)
    {
        Requirement.Needs(Browser is not null, "the browser Chromium (Debian package chromium)");
        var context = await Browser!.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = height },
            ColorScheme = scheme,
            ReducedMotion = ReducedMotion.Reduce,
        });
        return new Window(context, await context.NewPageAsync());
    }

    public async ValueTask InitializeAsync()
    {
        var path = new[] { "/usr/bin/chromium", "/usr/bin/chromium-browser" }.FirstOrDefault(File.Exists);
        if (path is not null)
        {
            // Far above what a page takes: a busy machine is no fault of it.
            Assertions.SetDefaultExpectTimeout(20_000);
            playwright = await Playwright.CreateAsync();
            Browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = path, Args = Arguments });
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null)
        {
            await Browser.DisposeAsync();
        }

        playwright?.Dispose();
    }
}
