using Bunit;
using Tarry.Web.Pages;

namespace Tarry.Web.Tests.Pages;

public sealed class PlanPageTests : IDisposable
{
    private readonly PageContext context = new();

    [Fact]
    public void Page_OfAStudyWithoutConditions_AsksForThem()
    {
        context.Study("pads");
        Assert.Contains("too little to plan for", Page(".empty").Find(".empty").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Page_OfAStudyWithoutData_PlansWithAssumedScatterAndDrawsTheOrder()
    {
        context.Study("pads", "Pads", PageContext.Condition("quill-usb"));
        var page = Page("#order");
        Assert.Contains("assumed, no published source", page.Markup, StringComparison.Ordinal);
        Assert.Single(page.FindAll("tr.advised"));
        Assert.All(page.FindAll(".sittings ol"), order => Assert.Equal(["bench-board", "quill-usb"], order.Children.Select(run => run.TextContent.Split(' ')[0].Trim()).Order()));
        Assert.Equal("bench?study=pads&sitting=sitting-1", page.Find(".sittings a").GetAttribute("href"));
    }

    [Fact]
    public async Task Ask_ForAnotherGoal_PutsItIntoTheAddress()
    {
        context.Study("pads", "Pads", PageContext.Condition("quill-usb"));
        context.GoTo("study/pads/plan");
        var page = Page("#order");
        await page.Find("#goal").ChangeAsync(new() { Value = "half-width" });
        page.WaitForAssertion(() => Assert.Equal("study/pads/plan?goal=half-width", context.Address));
        page.WaitForAssertion(() => Assert.Contains("To know the mean of each of 2 conditions", page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public void Ask_ForWhatIsNoNumber_SaysSoAndPlansWithTheUsual()
    {
        context.Study("pads", "Pads", PageContext.Condition("quill-usb"));
        context.GoTo("study/pads/plan?ms=0,5&power=2&sittings=0");
        var page = Page("#order");
        Assert.Equal(["ms-note", "power-note", "sittings-note"], page.FindAll(".wrong").Select(note => note.Id));
    }

    [Fact]
    public async Task Keep_WritesTheOrderThatTheBenchReads_AndCanBeUndone()
    {
        var study = context.Study("pads", "Pads", PageContext.Condition("quill-usb"));
        context.GoTo("study/pads/plan?sittings=2&trials=400&seed=7");
        var page = Page("#order");
        await page.Find("button.main").ClickAsync();
        var file = Path.Combine(study.Folder, "order.csv");
        page.WaitForElement(".undoable");
        var lines = File.ReadAllLines(file);
        Assert.Equal("sitting,step,condition,is_reference,trials,seed,command", lines[0]);
        Assert.Equal(1 + (2 * 2), lines.Length);
        Assert.All(lines.Skip(1), line => Assert.Contains(",400,", line, StringComparison.Ordinal));
        page.WaitForAssertion(() => Assert.True(page.Find("button.main").HasAttribute("disabled")));
        await page.Find(".undoable button").ClickAsync();
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".undoable")));
        Assert.False(File.Exists(file));
    }

    public void Dispose() => context.Dispose();

    private IRenderedComponent<PlanPage> Page(string awaited)
    {
        var page = context.Render<PlanPage>(page => page.Add(one => one.Study, "pads"));
        page.WaitForElement(awaited, TimeSpan.FromSeconds(20));
        return page;
    }
}
