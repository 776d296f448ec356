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
    public void Declare_ANewCondition_WritesItAndLeavesTheCommentsOfTheFile()
    {
        var file = Path.Combine(context.Study("pads").Folder, "study.toml");
        File.WriteAllText(file, "# mine\n" + File.ReadAllText(file));
        var page = Page();
        page.Find("#condition-id").Change("quill-usb");
        page.Find("#device").Change("Quill \"2\"");
        page.Find("#rate").Change("133.25");
        page.Find("#condition form").Submit();
        page.WaitForAssertion(() => Assert.Equal("quill-usb", page.Find("tbody th").TextContent.Trim()));
        var text = File.ReadAllText(file);
        Assert.StartsWith("# mine\n", text, StringComparison.Ordinal);
        Assert.EndsWith("[[condition]]\nid = \"quill-usb\"\ndevice = \"Quill \\\"2\\\"\"\nnominal_report_hz = 133.25\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Change_OfAFactorToNothing_TakesItOutOfTheFile()
    {
        var study = context.Study("pads", "Pads", PageContext.Condition("quill-usb"));
        context.GoTo("study/pads/setup?change=quill-usb");
        var page = Page();
        Assert.Equal("Quill 2", page.Find("#device").GetAttribute("value"));
        page.Find("#layer").Change("");
        page.Find("#condition form").Submit();
        page.WaitForAssertion(() => Assert.Equal(["device", "link"], Assert.Single(Studies.Study.Open(study.Folder).File.Conditions).Factors.Keys));
    }

    [Fact]
    public void Remove_OfACondition_CanBeUndone()
    {
        var study = context.Study("pads", "Pads", PageContext.Condition("a"), PageContext.Condition("b"));
        var before = File.ReadAllText(Path.Combine(study.Folder, "study.toml"));
        var page = Page();
        page.FindAll(".row-actions button")[0].Click();
        page.WaitForAssertion(() => Assert.Equal("b", Assert.Single(page.FindAll("tbody th")).TextContent.Trim()));
        page.Find(".undoable button").Click();
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
    public void Exclusions_AreListedAndCanBeCountedAgain()
    {
        var study = context.Study("pads", "Pads", PageContext.Condition("a"));
        using (var held = study.AcquireLock("test"))
        {
            study.AddExclusion(held, new Exclusion(new SessionKey("monday", "a"), "<b>cap</b> was off", 1, 40));
        }

        var page = Page();
        Assert.Contains("trials 1 to 40: <b>cap</b> was off", page.Find(".exclusions").TextContent, StringComparison.Ordinal);
        page.Find(".exclusions button").Click();
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".exclusions li")));
        Assert.Empty(Studies.Study.Open(study.Folder).File.Exclusions);
    }

    [Fact]
    public void Change_WhileAnotherProgramHoldsTheStudy_SaysWhoAndKeepsWhatIsEntered()
    {
        var study = context.Study("pads");
        using var held = study.AcquireLock("another program");
        var page = Page();
        page.Find("#condition-id").Change("quill-usb");
        page.Find("#condition form").Submit();
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
