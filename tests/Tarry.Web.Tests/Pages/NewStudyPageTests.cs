using Bunit;
using Tarry.Studies;
using Tarry.Web.Pages;

namespace Tarry.Web.Tests.Pages;

public sealed class NewStudyPageTests : IDisposable
{
    private readonly PageContext context = new();

    [Fact]
    public async Task Form_OfATitle_ProposesTheFolderAndMakesTheStudy()
    {
        var page = context.Render<NewStudyPage>();
        await page.Find("#title").ChangeAsync(new() { Value = "Drei Pads, 2. Lauf" });
        page.WaitForAssertion(() => Assert.Equal("drei-pads-2-lauf", page.Find("#folder").GetAttribute("value")));
        await page.Find("#margin").ChangeAsync(new() { Value = "0.25" });
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Equal("study/drei-pads-2-lauf/setup", context.Address));
        var made = Study.Open(Path.Combine(context.Folder, "drei-pads-2-lauf")).File;
        Assert.Equal(("Drei Pads, 2. Lauf", "bench-board", 0.25), (made.Title, made.Reference, made.MarginMs));
    }

    [Fact]
    public async Task Form_WithWrongValues_SaysSoAtEachFieldAndMakesNothing()
    {
        var page = context.Render<NewStudyPage>();
        await page.Find("#folder").ChangeAsync(new() { Value = "../out" });
        await page.Find("#reference").ChangeAsync(new() { Value = "Bench Board" });
        await page.Find("#margin").ChangeAsync(new() { Value = "0,5" });
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Equal(["title-note", "folder-note", "reference-note", "margin-note"], page.FindAll(".wrong").Select(note => note.Id)));
        Assert.All(page.FindAll("input"), input => Assert.Equal("true", input.GetAttribute("aria-invalid")));
        Assert.Empty(Directory.EnumerateFileSystemEntries(context.Folder));
        Assert.False(Directory.Exists(Path.Combine(context.Folder, "..", "out")));
    }

    [Fact]
    public async Task Form_WithAFolderThatIsThere_IsRefusedAtItsField()
    {
        context.Study("pads");
        var page = context.Render<NewStudyPage>();
        await page.Find("#title").ChangeAsync(new() { Value = "Pads" });
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Equal("folder-note", Assert.Single(page.FindAll(".wrong")).Id));
    }

    public void Dispose() => context.Dispose();
}
