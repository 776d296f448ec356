using System.Net;
using System.Net.Sockets;
using System.Net.WebSockets;
using System.Text;

namespace Tarry.Web.Tests.Hosting;

/// <summary>What other pages, other names and other programs cannot do to an app that listens on the loopback address.</summary>
/// <remarks>Cross-site requests by <c>Origin</c> and <c>Sec-Fetch-Site</c>: WHATWG Fetch 3.2 and W3C Fetch Metadata; rebinding of names: the Host check of RFC 9110, 7.2.</remarks>
public class LoopbackTests(RunningWebBench bench) : IClassFixture<RunningWebBench>
{
    [Theory]
    [InlineData("evil.example")]
    [InlineData("127.0.0.1.evil.example")]
    [InlineData("localhost.evil.example:80")]
    [InlineData("10.0.0.1")]
    public async Task ForeignHost_IsRefused(string host)
    {
        using var response = await bench.Send(HttpMethod.Get, "/", ("Host", host));
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
    }

    [Fact]
    public async Task EmptyHost_IsRefused()
    {
        using var client = new TcpClient();
        await client.ConnectAsync(bench.Address.Host, bench.Address.Port, TestContext.Current.CancellationToken);
        await using var stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes("GET / HTTP/1.1\r\nHost:\r\nConnection: close\r\n\r\n"), TestContext.Current.CancellationToken);
        using var reader = new StreamReader(stream);
        Assert.StartsWith("HTTP/1.1 400", await reader.ReadLineAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("localhost")]
    [InlineData("127.0.0.1")]
    [InlineData("[::1]")]
    public async Task OwnHost_IsAnswered(string host)
    {
        using var response = await bench.Send(HttpMethod.Get, "/", ("Host", $"{host}:{bench.Address.Port}"));
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
    }

    [Theory]
    [InlineData("GET", "/", "https://evil.example")]
    [InlineData("POST", "/_blazor/negotiate?negotiateVersion=1", "https://evil.example")]
    [InlineData("POST", "/", "null")]
    [InlineData("GET", "/", "http://localhost:1")]
    [InlineData("POST", "/", "https://127.0.0.1")]
    public async Task ForeignOrigin_IsRefused_EvenWithTheCookie(string method, string path, string origin)
    {
        using var response = await bench.Send(new HttpMethod(method), path, ("Origin", origin), ("Cookie", await bench.Cookie()));
        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
    }

    [Theory]
    [InlineData("cross-site", "no-cors")]
    [InlineData("cross-site", "navigate")]
    [InlineData("same-site", "cors")]
    public async Task RequestThatTheBrowserMarksAsForeign_IsRefused(string site, string mode)
    {
        using var response = await bench.Send(HttpMethod.Get, "/", ("Sec-Fetch-Site", site), ("Sec-Fetch-Mode", mode));
        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/_blazor/negotiate?negotiateVersion=1")]
    [InlineData("/study/any/publish")]
    public async Task PostWithoutTheCookie_IsRefused(string path)
    {
        using var response = await bench.Send(HttpMethod.Post, path);
        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
    }

    [Fact]
    public async Task PostWithACookieOfAnotherLaunch_IsRefused()
    {
        using var response = await bench.Send(HttpMethod.Post, "/_blazor/negotiate?negotiateVersion=1", ("Cookie", $"tarry-launch-{bench.Address.Port}=" + new string('0', 64)));
        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
    }

    [Theory]
    [InlineData(false, null)]
    [InlineData(false, "own")]
    [InlineData(true, "https://evil.example")]
    public async Task WebSocket_WithoutTheCookieOrFromAForeignOrigin_IsRefused(bool hasCookie, string? origin)
    {
        using var socket = new ClientWebSocket();
        if (hasCookie)
        {
            socket.Options.SetRequestHeader("Cookie", await bench.Cookie());
        }

        if (origin is not null)
        {
            socket.Options.SetRequestHeader("Origin", origin == "own" ? bench.Address.GetLeftPart(UriPartial.Authority) : origin);
        }

        socket.Options.CollectHttpResponseDetails = true;
        await Assert.ThrowsAsync<WebSocketException>(() => socket.ConnectAsync(WebSocketAddress, TestContext.Current.CancellationToken));
        Assert.Equal(HttpStatusCode.Forbidden, socket.HttpStatusCode);
    }

    [Fact]
    public async Task WebSocket_WithTheCookieAndOwnOrigin_IsAccepted()
    {
        using var socket = new ClientWebSocket();
        socket.Options.SetRequestHeader("Cookie", await bench.Cookie());
        socket.Options.SetRequestHeader("Origin", bench.Address.GetLeftPart(UriPartial.Authority));
        await socket.ConnectAsync(WebSocketAddress, TestContext.Current.CancellationToken);
        Assert.Equal(WebSocketState.Open, socket.State);
    }

    [Theory]
    [InlineData("/study/..~1..~1etc/standing")]
    [InlineData("/study/~1etc/standing")]
    [InlineData("/study/%2e%2e/standing")]
    [InlineData("/study/C:~1Windows/standing")]
    [InlineData("/_content/Tarry.Web/..%2f..%2ftarry.dll")]
    [InlineData("/tarry.runtimeconfig.json")]
    [InlineData("/appsettings.json")]
    public async Task PathThatLeavesTheShelf_FindsNothing(string path)
    {
        using var response = await bench.Send(HttpMethod.Get, path);
        var text = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(response.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.BadRequest || text.Contains("no study of this name", StringComparison.Ordinal), text);
        Assert.DoesNotContain("runtimeOptions", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/nothing-here")]
    [InlineData("/colours.css")]
    public async Task Answer_CarriesThePolicy_AndNoNameOfTheServer(string path)
    {
        using var response = await bench.Send(HttpMethod.Get, path);
        var policy = response.Headers.GetValues("Content-Security-Policy").Single();
        Assert.StartsWith("default-src 'none';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe-eval", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", response.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.False(response.Headers.Contains("Server"));
    }

    [Fact]
    public async Task Cookie_OfAnotherPort_StandsBesideIt()
    {
        await using var other = new RunningWebBench();
        await other.InitializeAsync();
        var (own, foreign) = (await bench.Cookie(), await other.Cookie());
        Assert.NotEqual(own.Split('=')[0], foreign.Split('=')[0]);
        using var response = await bench.Send(HttpMethod.Post, "/_blazor/negotiate?negotiateVersion=1", ("Cookie", $"{foreign}; {own}"));
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
    }

    [Fact]
    public async Task Cookie_IsHiddenFromScriptsAndKeptFromOtherSites()
    {
        using var page = await bench.Send(HttpMethod.Get, "/");
        var cookie = page.Headers.GetValues("Set-Cookie").Single(value => value.StartsWith("tarry-launch-", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Address_IsLoopback() => Assert.True(IPAddress.IsLoopback(IPAddress.Parse(bench.Address.Host)));

    private Uri WebSocketAddress => new UriBuilder(bench.Address) { Scheme = "ws", Path = "/_blazor" }.Uri;
}
