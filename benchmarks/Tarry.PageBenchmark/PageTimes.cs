using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Tarry.PageBenchmark;

/// <summary>Serves a study, opens its pages and says how long they took.</summary>
internal static partial class PageTimes
{
    private const int Rounds = 7;
    private const int BaselinePort = 4699;

    private static readonly string[] Pages =
        ["standing", "standing?sort=p99", "condition/pad-05", "compare?a=pad-05&b=pad-00", "compare", "play", "quality"];

    private static readonly string[] Arguments =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    /// <summary>Measures and prints a table.</summary>
    public static async Task Measure(string folder, int conditions, int sittings, int trials)
    {
        var csv = Path.Combine(folder, "large.csv");
        LargeStudy.Write(csv, conditions, sittings, trials);
        Run("new", Path.Combine(folder, "shelf", "large"), "--title", "Two dozen pads", "--reference", "pad-00");
        Run("import", Path.Combine(folder, "shelf", "large"), csv);
        using var server = Start("dotnet", [Program, "serve", Path.Combine(folder, "shelf"), "--no-open", "--port", "0"]);
        using var files = Start("python3", ["-m", "http.server", BaselinePort.ToString(CultureInfo.InvariantCulture), "--bind", "127.0.0.1", "--directory", folder]);
        try
        {
            var address = new Uri(new Uri((await server.StandardOutput.ReadLineAsync())!), "study/large/");
            using var client = new HttpClient { Timeout = TimeSpan.FromMinutes(10) };
            var clock = Stopwatch.StartNew();
            // The first paint does not wait for the findings; warm is what comes once they are there.
            while ((await client.GetStringAsync(new Uri(address, "standing"))).Contains("class=\"working\"", StringComparison.Ordinal))
            {
                await Task.Delay(100);
            }

            Console.WriteLine($"{conditions} conditions, {sittings} sittings, {conditions * sittings * trials:N0} trials; findings for the first time after {clock.Elapsed.TotalSeconds:0.0} s\n");
            await Table(folder, address, client);
        }
        finally
        {
            server.Kill(entireProcessTree: true);
            files.Kill(entireProcessTree: true);
        }
    }

    private static async Task Table(string folder, Uri address, HttpClient client)
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = "/usr/bin/chromium", Args = Arguments });
        Console.WriteLine("| page | HTML, kB | server, ms | painted, ms | slowest | interactive, ms | same bytes as a file, painted, ms |");
        Console.WriteLine("|---|---|---|---|---|---|---|");
        foreach (var page in Pages)
        {
            var html = await client.GetStringAsync(new Uri(address, page));
            await Plain(folder, address, client, html);
            var clock = Stopwatch.StartNew();
            await client.GetStringAsync(new Uri(address, page));
            var served = clock.Elapsed.TotalMilliseconds;
            var own = await Rounded(browser, new Uri(address, page), waits: true);
            var plain = await Rounded(browser, new Uri($"http://127.0.0.1:{BaselinePort}/page.html"), waits: false);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {page} | {Encoding.UTF8.GetByteCount(html) / 1000} | {served:0} | {Median(own, one => one.Painted):0} | {own.Max(one => one.Painted):0} | {Median(own, one => one.Interactive):0} | {Median(plain, one => one.Painted):0} |"));
        }
    }

    // The same bytes with the same style sheets, as files and without any script.
    private static async Task Plain(string folder, Uri address, HttpClient client, string html)
    {
        foreach (Match sheet in StyleSheet().Matches(html))
        {
            var file = Path.Combine(folder, sheet.Groups[1].Value);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            await File.WriteAllTextAsync(file, await client.GetStringAsync(new Uri(address, "/" + sheet.Groups[1].Value)));
        }

        await File.WriteAllTextAsync(Path.Combine(folder, "page.html"), Script().Replace(html, match => $"<!--{new string('x', Math.Max(0, match.Length - 7))}-->"));
    }

    private static async Task<List<(double Painted, double Interactive)>> Rounded(IBrowser browser, Uri address, bool waits)
    {
        var times = new List<(double, double)>();
        for (var round = 0; round <= Rounds; round++)
        {
            await using var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 1280, Height = 900 } });
            var page = await context.NewPageAsync();
            var clock = Stopwatch.StartNew();
            await page.GotoAsync(address.ToString());
            if (waits)
            {
                await Assertions.Expect(page.Locator(".workroom")).ToHaveAttributeAsync("data-ready", "", new() { Timeout = 30_000 });
            }

            var interactive = clock.Elapsed.TotalMilliseconds;
            var painted = await page.EvaluateAsync<double>("performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? performance.timing.domContentLoadedEventEnd - performance.timing.navigationStart");
            if (round > 0)
            {
                times.Add((painted, interactive));
            }
        }

        return times;
    }

    private static double Median(List<(double Painted, double Interactive)> times, Func<(double Painted, double Interactive), double> of) =>
        times.Select(of).Order().ElementAt(times.Count / 2);

    private static string Program => Path.Combine(AppContext.BaseDirectory, "tarry.dll");

    private static void Run(params string[] arguments)
    {
        using var process = Start("dotnet", [Program, .. arguments]);
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"tarry {arguments[0]} ended with {process.ExitCode}.");
        }
    }

    private static Process Start(string program, IReadOnlyList<string> arguments) =>
        Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = program == "python3" })!;

    [GeneratedRegex("<link rel=\"stylesheet\" href=\"([^\"]+)\"")]
    private static partial Regex StyleSheet();

    [GeneratedRegex("<script.*?</script>", RegexOptions.Singleline)]
    private static partial Regex Script();
}
