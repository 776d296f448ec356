using System.Globalization;
using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Quality;
using Tarry.Reports.Figures;

namespace Tarry.Reports.Tests.Figures;

public sealed class FigureTests
{
    public static TheoryData<string, string, string> Drawings()
    {
        var drawings = new TheoryData<string, string, string>();
        foreach (var figure in new[] { "standing", "ridge", "ladder", "sessions", "fold", "device-only", "run-chart", "play", "distribution", "difference" })
        {
            foreach (var style in new[] { "page", "phone", "video" })
            {
                foreach (var study in Studies.Keys)
                {
                    drawings.Add(figure, style, study);
                }
            }
        }

        return drawings;
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Draw_AnyStudyAndStyle_IsWellFormedAndNamed(string figure, string style, string study)
    {
        var root = Draw(figure, style, study);
        Assert.Equal("img", root.Attribute("role")!.Value);
        Assert.Equal("title", root.Elements().First().Name.LocalName);
        Assert.NotEmpty(Named(root, "title").First().Value);
        Assert.NotEmpty(Named(root, "desc").Single().Value);
        Assert.Equal(root.Attribute("aria-labelledby")!.Value, Named(root, "title").First().Attribute("id")!.Value);
        Assert.Equal(root.Attribute("aria-describedby")!.Value, Named(root, "desc").Single().Attribute("id")!.Value);
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Draw_AnyStudyAndStyle_KeepsEveryTextInside(string figure, string style, string study)
    {
        var root = Draw(figure, style, study);
        var box = root.Attribute("viewBox")!.Value.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToList();
        foreach (var text in Named(root, "text"))
        {
            var width = TextFit.Width(text.Nodes().OfType<XText>().Last().Value) * Number(text, "font-size");
            var left = Number(text, "x") - (text.Attribute("text-anchor")?.Value switch { "end" => width, "middle" => width / 2, _ => 0 });
            Assert.True(left >= -0.5 && left + width <= box[2] + 0.5, $"'{text.Value}' spans {left} to {left + width} of {box[2]}");
            Assert.InRange(Number(text, "y"), 0, box[3]);
        }
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Draw_AnyStudyAndStyle_LaysNoTextOverAnother(string figure, string style, string study)
    {
        var boxes = Named(Draw(figure, style, study), "text").Select(text =>
        {
            var size = Number(text, "font-size");
            var words = text.Nodes().OfType<XText>().Last().Value;
            var width = TextFit.Width(words) * size;
            var left = Number(text, "x") - (text.Attribute("text-anchor")?.Value switch { "end" => width, "middle" => width / 2, _ => 0 });
            // The height of capitals and descenders is common practice, no published source.
            return (Words: words, Left: left, Right: left + width, Top: Number(text, "y") - (0.75 * size), Bottom: Number(text, "y") + (0.2 * size));
        }).ToList();
        for (var first = 0; first < boxes.Count; first++)
        {
            for (var second = first + 1; second < boxes.Count; second++)
            {
                var (a, b) = (boxes[first], boxes[second]);
                Assert.False(a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom, $"'{a.Words}' lies over '{b.Words}'");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Draw_AnyStudyAndStyle_HasOnlyFiniteNumbers(string figure, string style, string study)
    {
        var text = Draw(figure, style, study).ToString();
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", text, StringComparison.Ordinal);
        Assert.DoesNotContain("∞", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("standing")]
    [InlineData("ridge")]
    [InlineData("play")]
    public void Draw_Twice_GivesTheSameBytes(string figure) =>
        Assert.Equal(Draw(figure, "page", "twelve").ToString(), Draw(figure, "page", "twelve").ToString());

    [Theory]
    [InlineData("standing", "page")]
    [InlineData("standing", "phone")]
    [InlineData("ridge", "page")]
    [InlineData("ridge", "phone")]
    public void Draw_TwelveConditions_SaysTrialsSessionsLevelAndOpenMarks(string figure, string style)
    {
        var words = Words(Draw(figure, style, "twelve"));
        Assert.Contains("12 conditions, 43 sessions, 64,308 trials used.", words, StringComparison.Ordinal);
        Assert.Contains("Intervals of means at 95 %.", words, StringComparison.Ordinal);
        Assert.Contains("Open marks: one sitting", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_OneSitting_IsOpenAndOthersAreSolid()
    {
        var root = Draw("standing", "page", "twelve");
        Assert.Single(WithClass(root, "outline"));
        Assert.Single(WithClass(root, "mark-open"));
        Assert.Equal(10 + 1, WithClass(root, "mark-solid").Count()); // ten conditions and the key
        Assert.Single(WithClass(root, "reference-solid"));
    }

    [Fact]
    public void Draw_WideIntervals_AreCutWithAnArrowAndSaidToBe()
    {
        var words = Words(Draw("standing", "page", "wide"));
        Assert.Contains("An arrow head: the mark goes on beyond the axis.", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_MeanUnknown_SaysWhatIsLacking() =>
        Assert.Contains("not enough data: 0 of 2 trials", Words(Draw("standing", "page", "lacking")), StringComparison.Ordinal);

    [Fact]
    public void Draw_LateTail_GivesItsShareBeyondTheBreak()
    {
        var words = Words(Draw("ridge", "page", "twelve"));
        Assert.Contains("later than 16 ms", words, StringComparison.Ordinal);
        Assert.Contains("Right of the break", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_Ridge_StrokesOnlyTheTopEdge()
    {
        foreach (var area in WithClass(Draw("ridge", "page", "twelve"), "pale"))
        {
            Assert.EndsWith("Z", area.Attribute("d")!.Value, StringComparison.Ordinal);
            Assert.Null(area.Attribute("stroke-width"));
        }
    }

    [Theory]
    [InlineData("page")]
    [InlineData("phone")]
    [InlineData("video")]
    public void Draw_DeviceOnly_SaysLevelBandAssumptionAndWhatIsRefused(string style)
    {
        var words = Words(Draw("device-only", style, "twelve"));
        Assert.Contains("11 conditions, 39 sessions", words, StringComparison.Ordinal);
        Assert.Contains("90 %, sampling variation only; edges blurred", words, StringComparison.Ordinal);
        Assert.Contains("too few trials", words, StringComparison.Ordinal);
        Assert.Contains("sd at most 0.40 ms", words, StringComparison.Ordinal);
        Assert.Contains("Taken out: the chain as the reference measured it", words, StringComparison.Ordinal);
        Assert.DoesNotContain("bench-board", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_DeviceOnly_GivesAMillisecondOneWidthInBothPanels()
    {
        var panels = DeviceOnlyPanels.Of([.. RankedRow.Of(Studies["twelve"]).Where(row => row.Condition.DeviceOnly is not null)], 10, 60, 12);
        Assert.Equal(panels.Measured.At(9) - panels.Measured.At(8), panels.Alone.At(2) - panels.Alone.At(1), 9);
        Assert.Equal(0, panels.Alone.Low);
    }

    [Fact]
    public void Draw_RunChart_MarksTheSittingThatChangedAndWhere()
    {
        var condition = Samples.Condition("quill-usb", 3.42, 1.1);
        var changed = condition with
        {
            Sessions = [.. condition.Sessions.Select((session, index) => session with { InPool = index != 1 })],
            Cautions = [Samples.Caution(CautionKind.ChangePoint, condition.Sessions[1].Key.ToString(), ("step_ms", 0.6), ("sequence", 700))],
        };
        var root = XElement.Parse(RunChartFigure.Draw(Samples.Document("Changed", [changed]), FigureStyle.Page));
        var words = Words(root);
        Assert.Contains("changed: tuesday", words, StringComparison.Ordinal);
        Assert.Contains("Dashed upright: where latency changed.", words, StringComparison.Ordinal);
        Assert.Single(root.Descendants(), element => element.Name.LocalName == "line" && element.Attribute("stroke-dasharray") is not null);
        Assert.Single(root.Descendants(), element => element.Name.LocalName == "path" && element.Attribute("stroke-dasharray") is not null);
        Assert.Contains("no change told", Words(XElement.Parse(RunChartFigure.Draw(Samples.Document("Steady", [condition]), FigureStyle.Page))), StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_DistributionOfOne_SaysItsBandAndMarksItsQuantiles()
    {
        var root = XElement.Parse(DistributionFigure.Draw(Samples.Document("One", [Samples.Condition("quill-usb", 3.42, 1.1)]), FigureStyle.Page));
        Assert.Contains("95 % band that holds the whole curve", Words(root), StringComparison.Ordinal);
        // sqrt(ln(40) / (2 * 6,000)) of the sample's 6,000 presses is 0.0175.
        Assert.Contains("1.8 points to either side", Words(root), StringComparison.Ordinal);
        Assert.Equal(5 + 1, WithClass(root, "mark-solid").Count()); // five quantiles and the mean
    }

    [Fact]
    public void Draw_DistributionOfTwo_NamesBothAndDrawsTheSecondDashed()
    {
        var root = XElement.Parse(DistributionFigure.Draw(Samples.Document("Two", [Samples.Condition("quill-usb", 3.42, 1.1), Samples.Condition("osier-stick", 6.9, 4)]), FigureStyle.Page));
        Assert.Contains("quill-usb", Words(root), StringComparison.Ordinal);
        Assert.Contains("osier-stick", Words(root), StringComparison.Ordinal);
        Assert.Equal(2, root.Descendants().Count(element => element.Name.LocalName == "path" && element.Attribute("stroke-dasharray") is not null));
    }

    [Theory]
    [InlineData(FigureTheme.Light)]
    [InlineData(FigureTheme.Dark)]
    public void Draw_FixedTheme_NeedsNoCustomProperties(FigureTheme theme)
    {
        var svg = StandingFigure.Draw(Studies["twelve"], FigureStyle.Video with { Theme = theme });
        Assert.DoesNotContain("var(", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("$", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("@media", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_QuantileOnTheLastTick_IsNotCut()
    {
        // 12.2 + 1.8 is a little more than 14 in binary.
        Assert.DoesNotContain("arrow head", Words(Draw("standing", "page", "twenty-four")), StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_InheritedTheme_BringsNoStyle() =>
        Assert.DoesNotContain("<style", RidgeFigure.Draw(Studies["twelve"], FigureStyle.Page with { Theme = FigureTheme.Inherited }), StringComparison.Ordinal);

    [Fact]
    public void StyleSheet_EveryRole_IsResolved()
    {
        foreach (var theme in Enum.GetValues<FigureTheme>())
        {
            Assert.DoesNotContain("$", FigureStyleSheet.For(theme), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Draw_Video_IsExactlyAFrame()
    {
        var root = Draw("standing", "video", "twenty-four");
        Assert.Equal("0 0 1920 1080", root.Attribute("viewBox")!.Value);
    }

    [Fact]
    public void Draw_TwentyFourConditions_LeavesALineOfRoomToEach()
    {
        var names = Named(Draw("standing", "video", "twenty-four"), "text").Where(text => text.Attribute("class")?.Value.StartsWith("strong", StringComparison.Ordinal) == true).Skip(1).ToList();
        Assert.Equal(24, names.Count);
        Assert.All(names.Zip(names.Skip(1)), pair => Assert.True(Number(pair.Second, "y") - Number(pair.First, "y") >= 1.2 * Number(pair.First, "font-size")));
    }

    internal static IReadOnlyDictionary<string, FindingsDocument> Studies { get; } = new Dictionary<string, FindingsDocument>
    {
        ["twelve"] = Samples.TwelveConditions(),
        ["empty"] = Samples.Document("Nothing yet", []),
        ["one"] = Samples.Document("One", [Samples.Condition("quill-usb", 3.42, 1.1)]),
        ["one-session"] = Samples.Document("One sitting", [Samples.Condition("bench-board", 2.1, 0.4, 1, true), Samples.Condition("quill-usb", 3.42, 1.1, 1)]),
        ["twenty-four"] = Samples.Document("Two dozen", [.. Enumerable.Range(0, 24).Select(index => Samples.Condition($"pad-{index}", 3 + (index * 0.4), 1 + (index % 5), reference: index == 0))]),
        ["wide"] = Samples.Document("Wide", [Samples.Condition("a", 3, 1) with { Mean = Samples.Latency(3, 40, 2) }, Samples.Condition("b", 4, 1)]),
        ["lacking"] = Samples.Document("Lacking", [Samples.Condition("a", 3, 1), Samples.Condition("b", 4, 1, 0) with { Density = null }]),
        ["hostile"] = Samples.Document("<script>alert('\"&')</script>\0 \u202E🎮 " + new string('W', 300), [Samples.Condition(new string('w', 64), 3, 1), Samples.Condition("b", 4, 1)]),
        ["distant"] = Samples.Document("Distant", [Samples.Condition("a", 1003, 1), Samples.Condition("b", 1004, 1)]),
    };

    private static XElement Draw(string figure, string style, string study)
    {
        var chosen = style switch { "page" => FigureStyle.Page, "phone" => FigureStyle.Phone, _ => FigureStyle.Video };
        return XElement.Parse(figure switch
        {
            "standing" => StandingFigure.Draw(Studies[study], chosen),
            "ridge" => RidgeFigure.Draw(Studies[study], chosen),
            "ladder" => LadderFigure.Draw(Studies[study], chosen),
            "device-only" => DeviceOnlyFigure.Draw(Studies[study], chosen),
            "fold" => FoldFigure.Draw(Studies[study], chosen),
            "run-chart" => RunChartFigure.Draw(Studies[study], chosen),
            "play" => PlayCurveFigure.Draw(Studies[study], chosen),
            "distribution" => DistributionFigure.Draw(Studies[study], chosen),
            "difference" => DifferenceFigure.Draw(Studies[study], chosen),
            _ => SessionsFigure.Draw(Studies[study], chosen),
        });
    }

    private static IEnumerable<XElement> Named(XElement root, string name) => root.Descendants().Where(element => element.Name.LocalName == name);

    private static IEnumerable<XElement> WithClass(XElement root, string name) => root.Descendants().Where(element => element.Attribute("class")?.Value == name);

    private static string Words(XElement root) => string.Join(' ', Named(root, "text").Select(text => text.Value)).Replace('\u00A0', ' ');

    private static double Number(XElement element, string attribute) => double.Parse(element.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);
}
