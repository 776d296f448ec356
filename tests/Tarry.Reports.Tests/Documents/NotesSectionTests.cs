using System.Xml.Linq;
using Tarry.Reports.Documents;
using Tarry.Reports.Tests.Figures;

namespace Tarry.Reports.Tests.Documents;

public class NotesSectionTests
{
    [Fact]
    public void Write_WithNotes_PutsThemFirstAsTextInParagraphs()
    {
        var root = Parse(new ReportPreface(null, "First <b>line</b>,\r\nsame paragraph.\r\n \r\n\r\nSecond & \u202Elast\u0007."));
        var notes = root.Descendants("section").First();
        Assert.Equal("notes", notes.Attribute("id")!.Value);
        Assert.Equal(["First <b>line</b>, same paragraph.", "Second & \uFFFDlast\uFFFD."], notes.Elements("p").Select(paragraph => paragraph.Value));
        Assert.Empty(notes.Descendants("b"));
        Assert.Equal("#notes", root.Descendants("nav").Single().Descendants("a").First().Attribute("href")!.Value);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("  \n ")]
    public void Write_WithoutNotes_IsTheReportAsBefore(string? notes) =>
        Assert.Equal(ReportDocument.Write(FigureTests.Studies["twelve"]), ReportDocument.Write(FigureTests.Studies["twelve"], new ReportPreface(" ", notes)));

    [Fact]
    public void Write_WithATitle_TakesItForTheHeadingAndTheWindow()
    {
        var root = Parse(new ReportPreface("My <own> title", null));
        Assert.Equal("My <own> title", root.Descendants("h1").Single().Value);
        Assert.StartsWith("My <own> title", root.Descendants("title").First().Value, StringComparison.Ordinal);
    }

    private static XElement Parse(ReportPreface preface) =>
        XDocument.Parse(ReportDocument.Write(FigureTests.Studies["twelve"], preface)["<!DOCTYPE html>\n".Length..]).Root!;
}
