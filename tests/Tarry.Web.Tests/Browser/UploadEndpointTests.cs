using System.Net;
using System.Text;

namespace Tarry.Web.Tests.Browser;

/// <summary>What the app answers to who is not its page: no file is taken in, nothing outside <c>report/</c> is given out.</summary>
public sealed class UploadEndpointTests : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("tarry-uploading-").FullName;
    private readonly HttpClient client = new(new HttpClientHandler { CookieContainer = new CookieContainer(), AllowAutoRedirect = false });
    private ServedFolder? served;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(true, "1", null, HttpStatusCode.OK)]
    [InlineData(true, null, null, HttpStatusCode.Forbidden)]
    [InlineData(false, "1", null, HttpStatusCode.Forbidden)]
    [InlineData(true, "1", "https://elsewhere.example", HttpStatusCode.Forbidden)]
    public async Task Post_OfAFile_NeedsTheCookieTheHeaderAndTheOrigin(bool hasCookie, string? header, string? origin, HttpStatusCode status)
    {
        if (hasCookie)
        {
            await client.GetAsync(served!.Address, Stop);
        }

        using var post = new HttpRequestMessage(HttpMethod.Post, new Uri(served!.Address, "uploads?name=a.csv")) { Content = new StringContent("a,b\n", Encoding.UTF8) };
        if (header is not null)
        {
            post.Headers.Add("X-Tarry-Upload", header);
        }

        if (origin is not null)
        {
            post.Headers.Add("Origin", origin);
        }

        using var answer = await client.SendAsync(post, Stop);
        Assert.Equal(status, answer.StatusCode);
    }

    [Fact]
    public async Task Post_ThatIsTooLong_IsRefusedByItsStatedLength()
    {
        await client.GetAsync(served!.Address, Stop);
        using var post = new HttpRequestMessage(HttpMethod.Post, new Uri(served.Address, "uploads?name=a.csv")) { Content = new LongContent(1_000_000_001) };
        post.Headers.Add("X-Tarry-Upload", "1");
        post.Headers.ExpectContinue = true;
        using var answer = await client.SendAsync(post, Stop);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains("tarry import", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("study/pads/published/report.html", HttpStatusCode.OK)]
    [InlineData("study/pads/published/%2e%2e/study.toml", HttpStatusCode.NotFound)]
    [InlineData("study/pads/published/..%2fstudy.toml", HttpStatusCode.NotFound)]
    [InlineData("study/pads/published/..%5cstudy.toml", HttpStatusCode.NotFound)]
    [InlineData("study/pads/published/%2fetc%2fpasswd", HttpStatusCode.NotFound)]
    [InlineData("study/..%2f..%2fpads/published/report.html", HttpStatusCode.NotFound)]
    [InlineData("study/pads/published/study.toml", HttpStatusCode.NotFound)]
    [InlineData("study/pads/published/", HttpStatusCode.NotFound)]
    public async Task Get_OfAPublishedFile_StaysInItsFolder(string path, HttpStatusCode status)
    {
        using var answer = await client.GetAsync(new Uri(served!.Address.ToString() + path), Stop);
        Assert.Equal(status, answer.StatusCode);
        if (status == HttpStatusCode.OK)
        {
            var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.Contains("sandbox", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("script-src", policy, StringComparison.Ordinal);
        }
        else
        {
            Assert.DoesNotContain("title =", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        }
    }

    public async ValueTask InitializeAsync()
    {
        Studies.Study.Create(Path.Combine(folder, "pads"), "Pads", null, 0.5);
        Directory.CreateDirectory(Path.Combine(folder, "pads", "report"));
        await File.WriteAllTextAsync(Path.Combine(folder, "pads", "report", "report.html"), "<script>alert(1)</script>", Stop);
        served = await ServedFolder.Start(folder);
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await served!.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>States a length and sends nothing: the answer should come before.</summary>
    private sealed class LongContent(long length) : HttpContent
    {
        protected override Task SerializeToStreamAsync(Stream stream, TransportContext? context) => Task.Delay(Timeout.Infinite, Stop);

        protected override bool TryComputeLength(out long computed)
        {
            computed = length;
            return true;
        }
    }
}
