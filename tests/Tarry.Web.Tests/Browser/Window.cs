using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Tarry.Web.Tests.Browser;

/// <summary>A window of the browser that keeps book of what no page may do: errors in its console, requests that leave the machine.</summary>
public sealed class Window : IAsyncDisposable
{
    private readonly IBrowserContext context;
    private readonly List<string> faults = [];
    private bool isExamined;

    internal Window(IBrowserContext context, IPage page)
    {
        (this.context, Page) = (context, page);
        page.Console += (_, message) => Note(message.Type == "error" && !IsExpected(message.Text), $"console: {message.Text}");
        page.PageError += (_, error) => Note(true, $"script: {error}");
        page.Request += (_, request) => Note(!IsOwn(new Uri(request.Url)), $"request to {request.Url}");
    }

    /// <summary>The page.</summary>
    public IPage Page { get; }

    /// <summary>Whether errors of the connection are part of the test, such as when the program is killed.</summary>
    public bool ExpectsLostConnection { get; set; }

    /// <summary>Whether an answer of "not found" is part of the test.</summary>
    public bool ExpectsNotFound { get; set; }

    /// <summary>Goes to an address and waits until the page answers to clicks.</summary>
    public async Task GoTo(Uri address)
    {
        await Page.GotoAsync(address.ToString());
        await Ready();
    }

    /// <summary>Waits until the page answers to clicks.</summary>
    public Task Ready() => Assertions.Expect(Page.Locator(".workroom[data-ready=true], .workroom[data-ready]").First).ToHaveAttributeAsync("data-ready", "", new() { Timeout = 20_000 });

    /// <summary>Fails where the page is wider than the window.</summary>
    public async Task FitsItsWidth()
    {
        var excess = await Page.Locator("html").EvaluateAsync<int>("element => element.scrollWidth - element.clientWidth");
        Assert.True(excess <= 0, $"{Page.Url} is {excess} pixels wider than its window of {Page.ViewportSize?.Width}.");
    }

    /// <summary>Fails where axe finds a violation.</summary>
    public async Task IsAccessible()
    {
        // Axe sets styles of its own while it looks, which the page's policy refuses.
        isExamined = true;
        var result = await Page.RunAxe();
        isExamined = false;
        Assert.True(result.Violations.Length == 0, Page.Url + "\n" + string.Join('\n', result.Violations.Select(violation =>
            $"{violation.Id}: {violation.Help}: {string.Join("; ", violation.Nodes.Take(3).Select(node => node.Html))}")));
    }

    /// <summary>Closes it, and fails the test where anything was noted.</summary>
    public async ValueTask DisposeAsync()
    {
        await context.DisposeAsync();
        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    private static bool IsOwn(Uri address) => address.Scheme is "data" or "blob" || address.IsLoopback;

    private bool IsExpected(string text) => (isExamined && text.Contains("inline style", StringComparison.Ordinal))
        || (ExpectsNotFound && text.Contains("404", StringComparison.Ordinal))
        || (ExpectsLostConnection && (text.Contains("ERR_CONNECTION", StringComparison.Ordinal) || text.Contains("WebSocket", StringComparison.Ordinal) || text.Contains("Failed to fetch", StringComparison.Ordinal)));

    private void Note(bool isFault, string text)
    {
        if (isFault)
        {
            faults.Add(text);
        }
    }
}
