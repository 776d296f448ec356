using Microsoft.AspNetCore.Builder;
using Tarry.Tests;
using Tarry.Web.Hosting;

namespace Tarry.Web.Tests.Hosting;

/// <summary>The web app in this process, on a free port, over an empty folder.</summary>
public sealed class RunningWebBench : IAsyncLifetime
{
    private readonly TemporaryFolder folder = new();
    private WebApplication? app;

    /// <summary>Where it answers.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>The folder of studies.</summary>
    public string Folder => folder.Path;

    public async ValueTask InitializeAsync()
    {
        app = WebBench.Build(new ServeOptions(folder.Path, 0, "test"));
        await app.StartAsync(TestContext.Current.CancellationToken);
        Address = new Uri(app.Urls.First());
    }

    public async ValueTask DisposeAsync()
    {
        await app!.DisposeAsync();
        folder.Dispose();
    }

    /// <summary>Sends a request as it stands, without a browser's help; redirects are not followed and no cookie is kept.</summary>
    public async Task<HttpResponseMessage> Send(HttpMethod method, string path, params (string Name, string Value)[] headers)
    {
        using var client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false });
        using var request = new HttpRequestMessage(method, new Uri(Address, path));
        foreach (var (name, value) in headers)
        {
            Assert.True(request.Headers.TryAddWithoutValidation(name, value));
        }

        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    /// <summary>The cookie that a browser gets on opening a page, as <c>name=value</c>.</summary>
    public async Task<string> Cookie()
    {
        using var page = await Send(HttpMethod.Get, "/");
        return page.Headers.GetValues("Set-Cookie").Single(cookie => cookie.StartsWith("tarry-launch-", StringComparison.Ordinal)).Split(';')[0];
    }
}
