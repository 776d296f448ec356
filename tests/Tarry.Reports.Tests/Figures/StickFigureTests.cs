using System.Globalization;
using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Sticks;
using Tarry.Findings.Tests.Sticks;
using Tarry.Reports.Documents;
using Tarry.Reports.Figures;
using Tarry.Reports.Pictures;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Reports.Tests.Figures;

public class StickFigureTests
{
    private static readonly FindingsDocument Document = Sticks();

    public static TheoryData<string, string> Drawings()
    {
        var drawings = new TheoryData<string, string>();
        foreach (var figure in new[] { "rose", "rest", "linearity", "reshaping" })
        {
            foreach (var style in new[] { "page", "phone", "video" })
            {
                drawings.Add(figure, style);
            }
        }

        return drawings;
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Draw_OfSticks_IsNamedAndKeepsItsTextInside(string figure, string style)
    {
        var root = XElement.Parse(Draw(figure, style));
        Assert.Equal(root.Attribute("aria-describedby")!.Value, root.Elements().Single(element => element.Name.LocalName == "desc").Attribute("id")!.Value);
        var box = root.Attribute("viewBox")!.Value.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToList();
        foreach (var text in root.Descendants().Where(element => element.Name.LocalName == "text"))
        {
            var width = TextFit.Width(text.Nodes().OfType<XText>().Last().Value) * Number(text, "font-size");
            var left = Number(text, "x") - (text.Attribute("text-anchor")?.Value switch { "end" => width, "middle" => width / 2, _ => 0 });
            Assert.True(left >= -0.5 && left + width <= box[2] + 0.5, $"'{text.Value}' spans {left} to {left + width} of {box[2]}");
            Assert.InRange(Number(text, "y"), 0, box[3]);
        }
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Draw_OfSticks_SaysLevelAndEvidence(string figure, string style)
    {
        var words = string.Join(' ', XElement.Parse(Draw(figure, style)).Descendants().Where(element => element.Name.LocalName is "text" or "desc").Select(element => element.Value));
        Assert.Contains("95", words, StringComparison.Ordinal);
        Assert.Matches("session|replicates|sweeps", words);
    }

    [Fact]
    public void Draw_Twice_IsTheSame() => Assert.Equal(Draw("rose", "page"), Draw("rose", "page"));

    [Fact]
    public void FigureSet_OfAStudyOfSticksAlone_HoldsTheirFigures() =>
        Assert.Equal(16, FigureSet.Of(Document).Count(drawing => drawing.Name.StartsWith("stick-", StringComparison.Ordinal)));

    [Fact]
    public void Report_OfAStudyOfSticksAlone_SaysWhatTheyDepartInAndWhatCannotBeTold()
    {
        var report = ReportDocument.Write(Document);
        Assert.Contains("rests off its middle", report, StringComparison.Ordinal);
        Assert.Contains("Record one of the procedure that does.", report, StringComparison.Ordinal);
        Assert.Contains("draws the circle towards a square", report, StringComparison.Ordinal);
        Assert.Contains("Rscript recheck-sticks.R", report, StringComparison.Ordinal);
    }

    [Fact]
    public void Report_WithoutSticks_HasNoSuchSection()
    {
        var report = ReportDocument.Write(Document with { Sticks = null });
        Assert.DoesNotContain("id=\"sticks\"", report, StringComparison.Ordinal);
        Assert.DoesNotContain("recheck-sticks", report, StringComparison.Ordinal);
    }

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    private static string Draw(string figure, string style)
    {
        var of = style switch { "page" => FigureStyle.Page, "phone" => FigureStyle.Phone, _ => FigureStyle.Video };
        return figure switch
        {
            "rose" => StickRoseFigure.Draw(Document, of),
            "rest" => RestCloudFigure.Draw(Document, of),
            "linearity" => NonLinearityFigure.Draw(Document, of),
            _ => ReshapingFigure.Draw(Document, of),
        };
    }

    private static FindingsDocument Sticks()
    {
        var stick = new FaultyStick { RateHz = 250, OffsetX = 1.2 };
        var layered = stick with { SquareMapping = true, Exponent = 1.4 };
        ConditionEntry[] conditions = [Entry("plain", "none"), Entry("a-condition-with-a-long-name-of-its-own", "remapper")];
        return new FindingsDocument
        {
            Title = "Sticks",
            Reference = null,
            MarginMs = 0.5,
            Seed = 1,
            Version = "test",
            Counts = new SessionCounts(0, 0, 0, 0, 0),
            Conditions = [],
            Comparisons = [],
            Ranking = [],
            Cautions = [],
            Sticks = StickFindings.Of(conditions, [.. Recordings(stick, conditions[0].Id), .. Recordings(layered, conditions[1].Id)]),
        };
    }

    private static IEnumerable<Studies.Sticks.StickSession> Recordings(FaultyStick stick, string id) =>
        [stick.Rest(1, id, seconds: 20), stick.Rim(2, condition: id), stick.Flicks(3, condition: id), stick.Sweeps(4, condition: id)];

    private static ConditionEntry Entry(string id, string layer) =>
        new() { Id = id, Factors = new Dictionary<string, string> { ["device"] = "Quill 2", ["layer"] = layer } };
}
