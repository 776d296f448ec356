using System.Globalization;
using System.Xml.Linq;
using Tarry.Findings.ReportStreams;
using Tarry.Reports.Figures;
using Tarry.Reports.Pictures;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;

namespace Tarry.Reports.Tests.Figures;

public class ReportStreamFigureTests
{
    private static readonly FigureStyle[] Styles = [FigureStyle.Page, FigureStyle.Phone, FigureStyle.Video];

    [Fact]
    public void Draw_Streams_HasABarForEachBinThatHoldsSomethingAndTheDeclaredInterval()
    {
        foreach (var style in Styles)
        {
            var root = XElement.Parse(ReportStreamFigure.Draw(Study(), style));
            // 1 ms slots: nine alike, one missed (2 ms); 20 bins a slot, bars of one bin.
            Assert.Single(OfClass(root, "mark-solid"));
            var open = Assert.Single(OfClass(root, "mark-open"));
            var solid = OfClass(root, "mark-solid").Single();
            Assert.True(Number(open, "x") > Number(solid, "x"));
            Assert.True(Number(open, "height") < Number(solid, "height"));
            // Declared is 1 ms, as observed: the line stands within the highest bar.
            var line = Assert.Single(OfClass(root, "reference-line"));
            Assert.InRange(Number(line, "x1"), Number(solid, "x"), Number(solid, "x") + Number(solid, "width"));
        }
    }

    [Fact]
    public void Draw_Streams_KeepsEveryTextInsideAndSaysWhatIsNotDrawn()
    {
        foreach (var style in Styles)
        {
            var root = XElement.Parse(ReportStreamFigure.Draw(Study(), style));
            var width = double.Parse(root.Attribute("viewBox")!.Value.Split(' ')[2], CultureInfo.InvariantCulture);
            Assert.All(root.Descendants().Where(element => element.Name.LocalName == "text"), text =>
            {
                var taken = TextFit.Width(text.Nodes().OfType<XText>().Last().Value) * Number(text, "font-size");
                var left = Number(text, "x") - (text.Attribute("text-anchor")?.Value switch { "end" => taken, "middle" => taken / 2, _ => 0 });
                Assert.True(left >= -0.5 && left + taken <= width + 0.5, text.Value);
            });
            Assert.Contains("without a report interval: 1", string.Join(' ', root.Descendants().Select(element => element.Value)), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Set_OfAStudyOfReportsAlone_HasThisFigureAndNoOther()
    {
        var drawings = FigureSet.Of(Study());
        Assert.NotEmpty(drawings);
        Assert.All(drawings, drawing => Assert.StartsWith("report-streams-", drawing.Name, StringComparison.Ordinal));
    }

    [Fact]
    public void IsWorthDrawing_WithoutAnInterval_IsNot() =>
        Assert.False(ReportStreamFigure.IsWorthDrawing(Study() with { ReportStreams = [Stream("irregular", [0, 1_000, 7_350])] }));

    private static Findings.FindingsDocument Study() => Samples.Document("Pads on the wire", []) with
    {
        ReportStreams = [Stream("quill", [.. Enumerable.Range(0, 10).Select(index => 1_000L * index), 11_000]), Stream("irregular", [0, 1_000, 7_350])],
    };

    private static ReportStreamFinding Stream(string condition, long[] ticks)
    {
        var endpoint = new ReportEndpoint { Number = 0x81, Transport = "usb", DeclaredIntervalUs = 1_000 };
        var log = new ReportLog();
        foreach (var tick in ticks)
        {
            log.Add(tick, endpoint.Number, [0]);
        }

        var key = new SessionKey("monday", condition);
        var record = new SessionRecord { Key = key, Segments = [new Segment(null, 1, 1_000_000, null)], ReportStream = new ReportStream { Device = "usb1.5", Endpoints = [endpoint] } };
        return ReportStreamFindings.Of(key, new ReportSession(record, log), endpoint);
    }

    private static List<XElement> OfClass(XElement root, string name) => [.. root.Descendants().Where(element => element.Attribute("class")?.Value == name)];

    private static double Number(XElement element, string attribute) => double.Parse(element.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);
}
