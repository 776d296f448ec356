using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Tarry.Web.Pages;
using Tarry.Web.Publishing;

namespace Tarry.Web.Tests.Pages;

public sealed class PublishPageTests : IDisposable
{
    private readonly PageContext context = new();

    [Fact]
    public void Page_OfAStudyWithoutTrials_ShowsTheWayToThem()
    {
        context.Study("pads", "Pads", PageContext.Condition("a"));
        Assert.Contains("no trials yet", Page(".empty").Find(".empty").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Write_OfReportAndTables_WritesThemAndLinksToEach()
    {
        var study = Studied();
        var page = Page("#with-report");
        await page.Find("#title").ChangeAsync(new() { Value = "<b>Mine</b>" });
        await page.Find("#notes").ChangeAsync(new() { Value = "First.\n\nSecond & <last>." });
        await page.Find("#with-figures").ChangeAsync(new() { Value = false });
        await page.Find("#with-tables").ChangeAsync(new() { Value = true });
        await page.Find("form").SubmitAsync();
        page.WaitForElement(".files", TimeSpan.FromSeconds(30));
        Assert.Equal(["findings.json", "report.html", "tables/headline.csv", "tables/trials.csv"], page.FindAll(".files a").Select(link => link.TextContent));
        Assert.Equal("study/pads/published/tables/trials.csv", page.FindAll(".files a")[3].GetAttribute("href"));
        var report = File.ReadAllText(Path.Combine(study, "report", "report.html"));
        Assert.Contains("<h1>&lt;b&gt;Mine&lt;/b&gt;</h1>", report, StringComparison.Ordinal);
        Assert.Contains("<p>First.</p><p>Second &amp; &lt;last&gt;.</p>", report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Write_OfADataPackageWithLicenceAndAuthor_StatesBoth()
    {
        var study = Studied();
        var page = Page("#with-report");
        await page.Find("#with-report").ChangeAsync(new() { Value = false });
        await page.Find("#with-figures").ChangeAsync(new() { Value = false });
        await page.Find("#with-package").ChangeAsync(new() { Value = true });
        await page.WaitForElement("#licence").ChangeAsync(new() { Value = "CC-BY-4.0" });
        await page.Find("#author").ChangeAsync(new() { Value = "An Author" });
        await page.Find("#subfolder").ChangeAsync(new() { Value = "first" });
        await page.Find("form").SubmitAsync();
        page.WaitForElement(".files", TimeSpan.FromSeconds(30));
        var descriptor = File.ReadAllText(Path.Combine(study, "report", "first", "package", "datapackage.json"));
        Assert.Contains("\"title\": \"An Author\"", descriptor, StringComparison.Ordinal);
        Assert.Contains("\"name\": \"CC-BY-4.0\"", descriptor, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Write_OfAStudyOfSticksAlone_HasTheirPositionsAndFindings()
    {
        var study = context.Study("pads", "Pads", PageContext.Condition("a"));
        PageContext.Rest(study, "monday", "a");
        var page = Page("#with-report");
        await page.Find("#with-report").ChangeAsync(new() { Value = false });
        await page.Find("#with-figures").ChangeAsync(new() { Value = false });
        await page.Find("#with-tables").ChangeAsync(new() { Value = true });
        await page.Find("#with-package").ChangeAsync(new() { Value = true });
        await page.Find("form").SubmitAsync();
        page.WaitForElement(".files", TimeSpan.FromSeconds(30));
        var written = page.FindAll(".files a").Select(link => link.TextContent).ToList();
        Assert.Subset(
            written.ToHashSet(),
            new HashSet<string>
            {
                "package/recheck-sticks.R",
                "package/recheck-sticks.py",
                "package/stick-findings.csv",
                "package/stick-recordings.csv",
                "package/sticks/monday.a.rest.csv",
                "package/sticks/monday.a.rest.json",
                "package/sticks/monday.a.rest.parquet",
                "tables/stick-findings.csv",
            });
        Assert.Equal("time_us,x,y\n0,128,127\n2000,129,127\n", string.Join('\n', File.ReadLines(Path.Combine(study.Folder, "report", "package", "sticks", "monday.a.rest.csv")).Take(3)) + "\n");
    }

    [Fact]
    public async Task Write_WithAFolderThatLeadsOut_IsRefusedAtItsField()
    {
        var study = Studied();
        var page = Page("#with-report");
        await page.Find("#subfolder").ChangeAsync(new() { Value = "../../out" });
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Equal("subfolder-note", Assert.Single(page.FindAll(".wrong")).Id));
        Assert.Null(context.Services.GetRequiredService<Publications>().Run("pads"));
        Assert.False(Directory.Exists(Path.Combine(study, "report")));
    }

    [Fact]
    public async Task Figures_ThatAreLeftOut_AreNotWritten()
    {
        var study = Studied();
        var page = Page("#with-report");
        await page.Find("#with-report").ChangeAsync(new() { Value = false });
        foreach (var box in page.FindAll(".figure input").Select(box => box.Id!).Where(id => id != "figure-standing").ToList())
        {
            await page.Find($"#{box}").ChangeAsync(new() { Value = false });
        }

        await page.Find("form").SubmitAsync();
        page.WaitForElement(".files", TimeSpan.FromSeconds(60));
        var written = Directory.GetFiles(Path.Combine(study, "report", "figures")).Select(Path.GetFileName).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(12, written.Count);
        Assert.All(written, name => Assert.StartsWith("standing-", name, StringComparison.Ordinal));
    }

    public void Dispose() => context.Dispose();

    private string Studied()
    {
        var study = context.Study("pads", "Pads", PageContext.Condition("a"), PageContext.Condition("b"));
        foreach (var sitting in (string[])["monday", "tuesday"])
        {
            PageContext.Capture(study, sitting, "a", 60);
            PageContext.Capture(study, sitting, "b", 60);
        }

        return study.Folder;
    }

    private IRenderedComponent<PublishPage> Page(string awaited)
    {
        var page = context.Render<PublishPage>(page => page.Add(one => one.Study, "pads"));
        page.WaitForElement(awaited, TimeSpan.FromSeconds(20));
        return page;
    }
}
