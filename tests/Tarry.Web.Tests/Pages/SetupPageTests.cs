using Bunit;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Web.Pages;

namespace Tarry.Web.Tests.Pages;

public sealed class SetupPageTests : IDisposable
{
    private readonly PageContext context = new();

    [Fact]
    public void Page_OfAStudyWithoutConditions_SaysWhatOneIs()
    {
        context.Study("pads");
        Assert.Contains("Nothing is declared yet", Page().Find(".empty").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Declare_ANewCondition_WritesItAndLeavesTheCommentsOfTheFile()
    {
        var file = Path.Combine(context.Study("pads").Folder, "study.toml");
        File.WriteAllText(file, "# mine\n" + File.ReadAllText(file));
        var page = Page();
        await page.Find("#condition-id").ChangeAsync(new() { Value = "quill-usb" });
        await page.Find("#device").ChangeAsync(new() { Value = "Quill \"2\"" });
        await page.Find("#rate").ChangeAsync(new() { Value = "133.25" });
        await page.Find("#condition form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Equal("quill-usb", page.Find("tbody th").TextContent.Trim()));
        var text = File.ReadAllText(file);
        Assert.StartsWith("# mine\n", text, StringComparison.Ordinal);
        Assert.EndsWith("[[condition]]\nid = \"quill-usb\"\ndevice = \"Quill \\\"2\\\"\"\nnominal_report_hz = 133.25\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Change_OfAFactorToNothing_TakesItOutOfTheFile()
    {
        var study = context.Study("pads", "Pads", PageContext.Condition("quill-usb"));
        context.GoTo("study/pads/setup?change=quill-usb");
        var page = Page();
        Assert.Equal("Quill 2", page.Find("#device").GetAttribute("value"));
        await page.Find("#layer").ChangeAsync(new() { Value = "" });
        await page.Find("#condition form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Equal(["device", "link"], Assert.Single(Studies.Study.Open(study.Folder).File.Conditions).Factors.Keys));
    }

    [Fact]
    public async Task Remove_OfACondition_CanBeUndone()
    {
        var study = context.Study("pads", "Pads", PageContext.Condition("a"), PageContext.Condition("b"));
        var before = File.ReadAllText(Path.Combine(study.Folder, "study.toml"));
        var page = Page();
        await page.FindAll(".row-actions button")[0].ClickAsync();
        page.WaitForAssertion(() => Assert.Equal("b", Assert.Single(page.FindAll("tbody th")).TextContent.Trim()));
        await page.Find(".undoable button").ClickAsync();
        page.WaitForAssertion(() => Assert.Equal(2, page.FindAll("tbody th").Count));
        Assert.Equal(before, File.ReadAllText(Path.Combine(study.Folder, "study.toml")));
    }

    [Fact]
    public void Conditions_WithSessions_OfferNoRemoval()
    {
        var study = context.Study("pads", "Pads", PageContext.Condition("a"), PageContext.Condition("b"));
        PageContext.Capture(study, "monday", "a");
        Assert.Equal("Remove b", Assert.Single(Page().FindAll(".row-actions button")).TextContent);
    }

    [Fact]
    public async Task Exclusions_AreListedAndCanBeCountedAgain()
    {
        var study = context.Study("pads", "Pads", PageContext.Condition("a"));
        using (var held = study.AcquireLock("test"))
        {
            study.AddExclusion(held, new Exclusion(new SessionKey("monday", "a"), "<b>cap</b> was off", 1, 40));
        }

        var page = Page();
        Assert.Contains("trials 1 to 40: <b>cap</b> was off", page.Find(".exclusions").TextContent, StringComparison.Ordinal);
        await page.Find(".exclusions button").ClickAsync();
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".exclusions li")));
        Assert.Empty(Studies.Study.Open(study.Folder).File.Exclusions);
    }

    [Fact]
    public async Task Change_WhileAnotherProgramHoldsTheStudy_SaysWhoAndKeepsWhatIsEntered()
    {
        var study = context.Study("pads");
        using var held = study.AcquireLock("another program");
        var page = Page();
        await page.Find("#condition-id").ChangeAsync(new() { Value = "quill-usb" });
        await page.Find("#condition form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("another program", page.Find(".fault").TextContent, StringComparison.Ordinal));
        Assert.Equal("quill-usb", page.Find("#condition-id").GetAttribute("value"));
    }

    [Fact]
    public void Page_OfADamagedStudyFile_SaysWhereAndWhatToDo()
    {
        File.WriteAllText(Path.Combine(context.Study("pads").Folder, "study.toml"), "title = 1\n");
        Assert.Contains("study.toml line 1", Page().Find(".fault").TextContent, StringComparison.Ordinal);
    }

    public void Dispose() => context.Dispose();

    private IRenderedComponent<SetupPage> Page() => context.Render<SetupPage>(page => page.Add(one => one.Study, "pads"));
}
