using Microsoft.Extensions.DependencyInjection;
using Tarry.Web.Shelf;
using Tarry.Web.Tests.Pages;

namespace Tarry.Web.Tests.Shelf;

public sealed class StudySummariesTests : IDisposable
{
    private readonly PageContext context = new();

    [Fact]
    public async Task Read_AStudyThatDidNotChange_GivesTheSameSummary()
    {
        var summaries = context.Services.GetRequiredService<StudySummaries>();
        var study = context.Study("pads", "Pads", PageContext.Condition("a"));
        context.Study("others");
        var first = await summaries.Read();
        PageContext.Capture(study, "monday", "a", 5);
        var second = await summaries.Read();
        Assert.Same(Named(first, "others"), Named(second, "others"));
        Assert.NotSame(Named(first, "pads"), Named(second, "pads"));
        Assert.Equal((0, 5), (Named(first, "pads").Trials, Named(second, "pads").Trials));
    }

    [Fact]
    public async Task Read_StudiesInFolders_FindsThemAndPutsTheNewestDataFirst()
    {
        foreach (var (name, sitting) in new[] { ("2024/old", "2024-05-01"), ("2026/new", "2026-05-01"), ("2025/middle", "2025-05-01") })
        {
            PageContext.Capture(context.Study(name, name, PageContext.Condition("a")), sitting, "a");
        }

        var read = await context.Services.GetRequiredService<StudySummaries>().Read();
        Assert.Equal(["2026/new", "2025/middle", "2024/old"], read.Select(study => study.Name));
    }

    public void Dispose() => context.Dispose();

    private static StudySummary Named(IReadOnlyList<StudySummary> all, string name) => all.Single(study => study.Name == name);
}
