using System.Globalization;
using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Sticks;
using Tarry.Findings.Tests.Sticks;
using Tarry.Reports.Documents;
using Tarry.Reports.Figures;
using Tarry.Reports.Pictures;
using Tarry.Reports.Wording;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Reports.Tests.Figures;

public class StickFigureTests
{
    private static readonly FindingsDocument Document = Sticks();

    public static TheoryData<string, string> Drawings()
    {
        var drawings = new TheoryData<string, string>();
        foreach (var figure in new[] { "rose", "rest", "return", "spectrum", "stops", "linearity", "reshaping" })
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

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Draw_OfSticks_LaysNoTextOnText(string figure, string style)
    {
        // Widths are estimated on the wide side: four fifths of one is ink for certain.
        var boxes = XElement.Parse(Draw(figure, style)).Descendants().Where(element => element.Name.LocalName == "text").Select(text =>
        {
            var (words, size) = (text.Nodes().OfType<XText>().Last().Value, Number(text, "font-size"));
            var (width, x) = (0.8 * TextFit.Width(words) * size, Number(text, "x"));
            var left = text.Attribute("text-anchor")?.Value switch { "end" => x - width, "middle" => x - (width / 2), _ => x };
            return (Words: words, Left: left, Right: left + width, Top: Number(text, "y") - (0.7 * size), Bottom: Number(text, "y"));
        }).ToList();
        foreach (var (one, index) in boxes.Select((box, index) => (box, index)))
        {
            Assert.DoesNotContain(boxes.Skip(index + 1), other => one.Left < other.Right && other.Left < one.Right && one.Top < other.Bottom && other.Top < one.Bottom);
        }
    }

    [Fact]
    public void ReturnFigure_OfReleases_DrawsEachPlaceWithItsTailToTheSideFromWhichItCame()
    {
        var finding = Document.Sticks!.Conditions[0];
        var root = ReturnFigure.Build(Document with { Sticks = Document.Sticks with { Conditions = [finding] } }, FigureStyle.Page);
        var tails = root.Elements().Single(element => element.Name.LocalName == "path" && Class(element) == "mark").Attribute("d")!.Value.Split('M', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => line.Split('L', ' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToList())
            .Select(ends => (X: ends[2] - ends[0], Y: ends[1] - ends[3])).ToList();
        Assert.Equal(40, finding.Returns.Sum(direction => direction.Releases));
        Assert.Equal(40, tails.Count);
        Assert.Equal([0, 45, 90, 135, 180, 225, 270, 315], tails.Select(tail => ((5 * Math.Round(Math.Atan2(tail.Y, tail.X) * 36 / Math.PI)) + 360) % 360).Distinct().Order());
        Assert.Equal(8, root.Elements().Count(element => element.Name.LocalName == "circle" && Class(element) == "reference-solid"));
        Assert.Contains("40 releases", Words(root).Replace(Numbers.NoBreakSpace, ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void RestCloudFigure_OfASteppedStick_DrawsItsStepToScale()
    {
        // 201 positions from -100 to 100 %: one step is 1 %, so that the square is as wide as the grid lines at 0 and 1 % are apart.
        var stick = new FaultyStick { RateHz = 250, Steps = 201, OffsetX = 2 };
        var root = RestCloudFigure.Build(Of([Entry("pad", "none")], [stick.Rest(1, "pad", seconds: 20), stick.Rim(2, condition: "pad")]), FigureStyle.Page);
        var square = root.Elements().Single(element => element.Name.LocalName == "rect" && Class(element) == "axis");
        double At(string label) => Number(root.Elements().First(element => element.Name.LocalName == "text" && element.Value == label && element.Attribute("text-anchor") is not null), "x");
        Assert.Equal((At("2\u00A0%") - At("0\u00A0%")) / 2, Number(square, "width"), 0.1);
        Assert.Equal(At("0\u00A0%"), Number(square, "x") + (Number(square, "width") / 2), 0.1);
        Assert.Contains("one step 1.0\u00A0%", Words(root), StringComparison.Ordinal);
        Assert.DoesNotContain("release", Words(root), StringComparison.Ordinal);
    }

    [Fact]
    public void RestSpectrumFigure_OfAHum_MarksAndNamesIt()
    {
        var root = RestSpectrumFigure.Build(Document, FigureStyle.Page);
        var mark = root.Elements().First(element => element.Name.LocalName == "line" && Class(element) == "reference-line");
        var name = root.Elements().First(element => element.Name.LocalName == "text" && Class(element) == "reference");
        Assert.Equal(Number(mark, "x1"), Number(name, "x"), 8.0);
        Assert.Equal("50.0\u00A0Hz", name.Value);
        Assert.Contains("hum of 50\u00A0Hz mains?", Words(root), StringComparison.Ordinal);
    }

    [Fact]
    public void RestSpectrumFigure_SaysWhichAxesItDoesNotDraw()
    {
        var dead = new FaultyStick { RateHz = 250, Noise = 0 };
        var root = RestSpectrumFigure.Build(Of([Entry("pad", "none"), Entry("dead", "none")], [new FaultyStick { RateHz = 250 }.Rest(1, "pad"), dead.Rest(2, "dead")]), FigureStyle.Page);
        Assert.Contains("dead, x; dead, y.", Words(root), StringComparison.Ordinal);
    }

    [Fact]
    public void StopErrorFigure_OfStops_StandsOverTheirAngles()
    {
        var root = StopErrorFigure.Build(Document, FigureStyle.Page);
        var dots = root.Elements().Where(element => element.Name.LocalName == "circle").Select(dot => Number(dot, "cx")).Distinct().Order().ToList();
        double At(string degrees) => Number(root.Elements().First(element => element.Name.LocalName == "text" && element.Value == degrees), "x");
        Assert.Equal(8, dots.Count);
        Assert.Equal(At("0"), dots[0], 0.2);
        Assert.Equal(At("315"), dots[^1], 0.2);
    }

    [Fact]
    public void Figures_OfAFault_SayItInStrongWords()
    {
        var root = RestCloudFigure.Build(Document, FigureStyle.Page);
        Assert.Contains(root.Elements(), element => Class(element) == "strong" && element.Value == "rests off its middle");
    }

    [Fact]
    public void Report_OfStops_HasTheirTable()
    {
        var report = ReportDocument.Write(Document);
        Assert.Contains("Stops of known angle", report, StringComparison.Ordinal);
        var stop = Document.Sticks!.Conditions[0].Stops.Single(stop => stop.Degrees == 135);
        Assert.Contains($"says {StickWording.Said(stop)}; {StickWording.Bounds(stop)}; within one session, 4\u00A0visits", report, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_Twice_IsTheSame() => Assert.Equal(Draw("rose", "page"), Draw("rose", "page"));

    [Fact]
    public void FigureSet_OfAStudyOfSticksAlone_HoldsTheirFigures() =>
        Assert.Equal(28, FigureSet.Of(Document).Count(drawing => drawing.Name.StartsWith("stick-", StringComparison.Ordinal)));

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

    private static string? Class(XElement element) => element.Attribute("class")?.Value;

    private static string Words(XElement root) => string.Join(' ', root.Descendants().Where(element => element.Name.LocalName is "text" or "desc").Select(element => element.Value));

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    private static string Draw(string figure, string style)
    {
        var of = style switch { "page" => FigureStyle.Page, "phone" => FigureStyle.Phone, _ => FigureStyle.Video };
        return StudyFigures.Of(Document).Single(one => one.Name == $"stick-{figure}").Draw(Document, of);
    }

    private static FindingsDocument Sticks()
    {
        var stick = new FaultyStick { RateHz = 250, OffsetX = 1.2, ReturnScatter = 0.3, Hum = (50, 0.05) };
        var layered = stick with { SquareMapping = true, Exponent = 1.4 };
        ConditionEntry[] conditions = [Entry("plain", "none"), Entry("a-condition-with-a-long-name-of-its-own", "remapper")];
        return Of(conditions, [.. Recordings(stick, conditions[0].Id), .. Recordings(layered, conditions[1].Id)]);
    }

    private static FindingsDocument Of(IReadOnlyList<ConditionEntry> conditions, IReadOnlyList<Studies.Sticks.StickSession> sessions) =>
        new()
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
            Sticks = StickFindings.Of(conditions, sessions),
        };

    private static IEnumerable<Studies.Sticks.StickSession> Recordings(FaultyStick stick, string id) =>
        [stick.Rest(1, id, seconds: 20), stick.Rim(2, condition: id), stick.Flicks(3, condition: id), stick.Sweeps(4, condition: id), stick.Stops(5, condition: id)];

    private static ConditionEntry Entry(string id, string layer) =>
        new() { Id = id, Factors = new Dictionary<string, string> { ["device"] = "Quill 2", ["layer"] = layer } };
}
