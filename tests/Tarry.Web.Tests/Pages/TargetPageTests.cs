using Tarry.Web.Tests.Hosting;

namespace Tarry.Web.Tests.Pages;

public sealed class TargetPageTests(RunningWebBench bench) : IClassFixture<RunningWebBench>
{
    [Theory]
    [InlineData("width=1e9", "2000")]
    [InlineData("width=-5", "8")]
    [InlineData("width=wide&height=NaN&interval_ms=soon", "96")]
    public async Task Address_WithSizesThatAreNone_StaysWithinTheLimits(string query, string width)
    {
        using var response = await bench.Send(HttpMethod.Get, $"/target?{query}");
        var text = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.DoesNotContain("This page has a fault", text, StringComparison.Ordinal);
        Assert.Contains($"value=\"{width}\"", text, StringComparison.Ordinal);
    }
}
