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
    public void Write_OfReportAndTables_WritesThemAndLinksToEach()
    {
        var study = Studied();
        var page = Page("#with-report");
        page.Find("#title").Change("<b>Mine</b>");
        page.Find("#notes").Change("First.\n\nSecond & <last>.");
        page.Find("#with-figures").Change(false);
        page.Find("#with-tables").Change(true);
        page.Find("form").Submit();
        page.WaitForElement(".files", TimeSpan.FromSeconds(30));
        Assert.Equal(["findings.json", "report.html", "tables/headline.csv", "tables/trials.csv"], page.FindAll(".files a").Select(link => link.TextContent));
        Assert.Equal("study/pads/published/tables/trials.csv", page.FindAll(".files a")[3].GetAttribute("href"));
        var report = File.ReadAllText(Path.Combine(study, "report", "report.html"));
        Assert.Contains("<h1>&lt;b&gt;Mine&lt;/b&gt;</h1>", report, StringComparison.Ordinal);
        Assert.Contains("<p>First.</p><p>Second &amp; &lt;last&gt;.</p>", report, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_OfADataPackageWithLicenceAndAuthor_StatesBoth()
    {
        var study = Studied();
        var page = Page("#with-report");
        page.Find("#with-report").Change(false);
        page.Find("#with-figures").Change(false);
        page.Find("#with-package").Change(true);
        page.WaitForElement("#licence").Change("CC-BY-4.0");
        page.Find("#author").Change("An Author");
        page.Find("#subfolder").Change("first");
        page.Find("form").Submit();
        page.WaitForElement(".files", TimeSpan.FromSeconds(30));
        var descriptor = File.ReadAllText(Path.Combine(study, "report", "first", "package", "datapackage.json"));
        Assert.Contains("\"title\": \"An Author\"", descriptor, StringComparison.Ordinal);
        Assert.Contains("\"name\": \"CC-BY-4.0\"", descriptor, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_WithAFolderThatLeadsOut_IsRefusedAtItsField()
    {
        var study = Studied();
        var page = Page("#with-report");
        page.Find("#subfolder").Change("../../out");
        page.Find("form").Submit();
        Assert.Equal("subfolder-note", Assert.Single(page.FindAll(".wrong")).Id);
        Assert.Null(context.Services.GetRequiredService<Publications>().Run("pads"));
        Assert.False(Directory.Exists(Path.Combine(study, "report")));
    }

    [Fact]
    public void Figures_ThatAreLeftOut_AreNotWritten()
    {
        var study = Studied();
        var page = Page("#with-report");
        page.Find("#with-report").Change(false);
        foreach (var box in page.FindAll(".figure input").Select(box => box.Id!).Where(id => id != "figure-standing").ToList())
        {
            page.Find($"#{box}").Change(false);
        }

        page.Find("form").Submit();
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
