using System.Text;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Tarry.Web.Pages;
using Tarry.Web.Uploads;

namespace Tarry.Web.Tests.Pages;

public sealed class ImportPageTests : IDisposable
{
    private const string Rows = "condition,sitting,seq,press_time_us,latency_us,outcome\nquill-usb,monday,1,0,8125,response\nquill-usb,monday,2,61250,,missed\nquill-usb,monday,3,122500,soon,response\n";
    private readonly PageContext context = new();

    [Fact]
    public void Page_WithoutFiles_OffersToChooseThem()
    {
        context.Study("pads");
        var page = Page();
        Assert.Equal("file", page.Find("#files").GetAttribute("type"));
        Assert.Empty(page.FindAll("#preview-heading"));
    }

    [Fact]
    public async Task Page_WithACsv_ShowsWhatWouldBeKeptAndRefusedBeforeAnythingIsWritten()
    {
        var study = context.Study("pads");
        await Bring("monday.csv", Rows);
        var page = Page();
        page.WaitForElement("#preview-heading");
        Assert.Equal(["3 rows", "2", "1", "1", "quill-usb"], page.FindAll(".counts dd").Select(count => count.TextContent.Replace('\u00a0', ' ')));
        Assert.Contains("monday.csv line 4", page.Find(".refused").TextContent, StringComparison.Ordinal);
        Assert.Empty(Studies.Study.Open(study.Folder).SessionKeys);
    }

    [Fact]
    public async Task Keep_OfAPreview_SealsItAndLetsTheFileGo()
    {
        var study = context.Study("pads");
        var upload = await Bring("monday.csv", Rows);
        var page = Page();
        await page.WaitForElement("button.main").ClickAsync();
        page.WaitForElement(".kept");
        Assert.Equal("monday.quill-usb", Assert.Single(Studies.Study.Open(study.Folder).SessionKeys).ToString());
        Assert.Equal("study/pads/import", context.Address);
        Assert.False(File.Exists(upload.Path));
        Assert.Contains("monday.csv", page.Find("#before").ParentElement!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_WithSessionsThatTheStudyHas_RefusesToKeepThem()
    {
        var study = context.Study("pads", "Pads", PageContext.Condition("quill-usb"));
        PageContext.Capture(study, "monday", "quill-usb");
        await Bring("monday.csv", Rows);
        var page = Page();
        Assert.True(page.WaitForElement("button.main").HasAttribute("disabled"));
        Assert.Contains("monday.quill-usb already", page.Find(".fault").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_WithAColumnOfAnotherName_OffersTheColumnsOfTheFile()
    {
        context.Study("pads");
        await Bring("lab.csv", "condition,sitting,delay\nquill-usb,monday,8.125\n");
        var page = Page();
        Assert.Contains("\u201cColumn of the latency\u201d", page.WaitForElement(".fault").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("--latency-column", page.Find(".fault").TextContent, StringComparison.Ordinal);
        Assert.Equal(["", "condition", "sitting", "delay"], page.FindAll("#latency-column option").Select(option => option.GetAttribute("value")));
        await page.Find("#latency-column").ChangeAsync(new() { Value = "delay" });
        page.WaitForAssertion(() => Assert.Contains("\u201cUnit of the latency\u201d", page.Find(".fault").TextContent, StringComparison.Ordinal));
        await page.Find("#latency-unit").ChangeAsync(new() { Value = "ms" });
        page.WaitForElement("#preview-heading");
    }

    [Fact]
    public async Task Page_WithALogicRecording_OffersItsChannelsAndAsksForTheRest()
    {
        context.Study("pads");
        await Bring("bench.vcd", "$timescale 1 us $end\n$scope module rig $end\n$var wire 1 ! contact $end\n$var wire 1 \" lamp $end\n$upscope $end\n$enddefinitions $end\n#0\n0!\n0\"\n#1000\n1!\n#9000\n1\"\n#20000\n0!\n#20500\n0\"\n#900000\n");
        var page = Page();
        page.WaitForAssertion(() => Assert.Equal(["", "rig.contact", "rig.lamp"], page.FindAll("#press-channel option").Select(option => option.GetAttribute("value"))));
        await page.Find("#condition").ChangeAsync(new() { Value = "quill-usb" });
        await page.Find("#sitting").ChangeAsync(new() { Value = "monday" });
        await page.Find("#press-channel").ChangeAsync(new() { Value = "rig.contact" });
        await page.WaitForElement("#response-channel").ChangeAsync(new() { Value = "rig.lamp" });
        page.WaitForElement("#preview-heading");
        Assert.Contains("monday.quill-usb", page.Find(".imported table").TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bomb.csv", "PK\u0003\u0004anything", "compressed (zip)")]
    [InlineData("page.csv", "<html><script>alert(1)</script></html>\n", "There is no column for condition")]
    [InlineData("picture.wav", "RIFF\u0004\u0000\u0000\u0000WEBP", "byte")]
    public async Task Page_WithAFileThatIsSomethingElse_NamesItAndKeepsNothing(string name, string content, string said)
    {
        var study = context.Study("pads");
        await Bring(name, content, Encoding.Latin1);
        var page = Page();
        page.WaitForAssertion(() => Assert.Contains(said, page.Find(".fault").TextContent, StringComparison.Ordinal));
        Assert.Empty(page.FindAll(".fault script"));
        Assert.Empty(Studies.Study.Open(study.Folder).SessionKeys);
    }

    [Fact]
    public async Task TakeOff_OfAFile_CanBeUndone()
    {
        context.Study("pads");
        await Bring("monday.csv", Rows);
        var page = Page();
        page.WaitForElement("#preview-heading");
        await page.WaitForElement(".brought button").ClickAsync();
        page.WaitForAssertion(() => Assert.Equal("study/pads/import", context.Address));
        page.WaitForAssertion(() => Assert.Empty(page.FindAll("#preview-heading")));
        await page.WaitForElement(".undoable button").ClickAsync();
        page.WaitForElement("#preview-heading");
        Assert.StartsWith("study/pads/import?file=", context.Address, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_WithHostileNamesAndCells_ShowsThemAsText()
    {
        context.Study("pads");
        await Bring("<script>\u202Egpj.csv", "condition,sitting,latency_us,device\nquill,monday,8125,=cmd|' /C calc'!A0\nquill,monday,<img src=x onerror=alert(1)>,\n");
        var page = Page();
        page.WaitForElement("#preview-heading");
        Assert.Empty(page.FindAll(".imported script, .imported img, .brought script"));
        Assert.Contains("_script__gpj.csv", page.Find(".brought").TextContent, StringComparison.Ordinal);
        Assert.Contains("<img src=x", page.Find(".refused").TextContent, StringComparison.Ordinal);
    }

    public void Dispose() => context.Dispose();

    private async Task<Upload> Bring(string name, string content, Encoding? encoding = null)
    {
        using var bytes = new MemoryStream((encoding ?? Encoding.UTF8).GetBytes(content));
        var upload = await context.Services.GetRequiredService<UploadFolder>().Receive(name, bytes.Length, bytes, Xunit.TestContext.Current.CancellationToken);
        context.GoTo($"study/pads/import?file={upload.Id}");
        return upload;
    }

    private IRenderedComponent<ImportPage> Page() => context.Render<ImportPage>(page => page.Add(one => one.Study, "pads"));
}
