using System.Globalization;
using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Reports.Documents;
using Tarry.Reports.Tests.Figures;
using Tarry.Studies.Sessions;

namespace Tarry.Reports.Tests.Documents;

public sealed class ReportDocumentTests
{
    public static TheoryData<string> Studies() => [.. FigureTests.Studies.Keys];

    [Theory]
    [MemberData(nameof(Studies))]
    public void Write_AnyStudy_IsWellFormedWithOneTopHeadingAndNamedSections(string study)
    {
        var root = Parse(study);
        Assert.Single(root.Descendants("h1"));
        Assert.Single(root.Descendants("main"));
        Assert.All(root.Descendants("section"), section =>
            Assert.Equal(section.Attribute("aria-labelledby")!.Value, section.Element("h2")!.Attribute("id")!.Value));
        Assert.All(root.Descendants("table"), table => Assert.NotEmpty(table.Element("caption")!.Value));
        Assert.Empty(root.Descendants("script"));
    }

    [Theory]
    [MemberData(nameof(Studies))]
    public void Write_AnyStudy_HasUniqueIdsAndNoLinkToNowhere(string study)
    {
        var root = Parse(study);
        var ids = root.Descendants().Select(element => element.Attribute("id")?.Value).OfType<string>().ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        string[] pointing = ["aria-labelledby", "aria-describedby"];
        Assert.All(root.Descendants().SelectMany(element => pointing.Select(name => element.Attribute(name)?.Value)).OfType<string>(), id => Assert.Contains(id, ids));
        Assert.All(root.Descendants("a"), link => Assert.Contains(link.Attribute("href")!.Value[1..], ids));
    }

    [Theory]
    [MemberData(nameof(Studies))]
    public void Write_AnyStudy_AsksNothingOfOtherMachines(string study)
    {
        var text = Write(study).Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal);
        Assert.DoesNotContain("http:", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("https:", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("url(", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("@import", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("src=", text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:\"", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Studies))]
    public void Write_AnyStudy_ShowsNoBadNumberAndNoEmptySentence(string study)
    {
        var words = Words(study);
        string[] bad = ["NaN", "Infinity", "∞", "+-", "..", " .", "( ", " ,", "System.", "Tarry.Metrology", "best "];
        Assert.All(bad, sign => Assert.DoesNotContain(sign, words, StringComparison.Ordinal));

        // Only a formula, which says what it is, may have it.
        var root = Parse(study);
        root.Descendants("section").Single(section => section.Attribute("id")!.Value == "methods").Remove();
        Assert.DoesNotContain("±", root.Value, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Studies))]
    public void Write_AnyStudy_ShowsCountsThatAddUp(string study)
    {
        var table = Parse(study).Descendants("section").Single(section => section.Attribute("id")!.Value == "counts").Element("table")!;
        var rows = table.Element("tbody")!.Elements("tr").Select(row => row.Elements("td").Select(cell => long.Parse(cell.Value, NumberStyles.AllowThousands, CultureInfo.InvariantCulture)).ToList()).ToList();
        Assert.All(rows, row => Assert.Equal(row[0], row.Skip(1).Sum()));
        for (var column = 0; column < 6; column++)
        {
            Assert.Equal(rows[^1][column], rows.SkipLast(1).Sum(row => row[column]));
        }
    }

    [Fact]
    public void Write_Sessions_AddUpToTheirConditions()
    {
        var document = FigureTests.Studies["twelve"];
        var counts = Parse("twelve").Descendants("section").Single(section => section.Attribute("id")!.Value == "counts");
        var sessions = counts.Element("details")!.Element("table")!.Element("tbody")!.Elements("tr").ToList();
        Assert.Equal(document.Conditions.Sum(condition => condition.Sessions.Count), sessions.Count);
        var captured = sessions.Sum(row => long.Parse(row.Elements("td").First().Value, NumberStyles.AllowThousands, CultureInfo.InvariantCulture));
        Assert.Equal(document.Conditions.Sum(condition => condition.Counts.Captured), captured);
    }

    [Fact]
    public void Write_RefusedRowsOfNoCondition_AreShown() =>
        Assert.Contains("in no condition 4 0 0 0 4 0", string.Join(' ', Parse("twelve").Descendants("tr").Select(Row)), StringComparison.Ordinal);

    [Fact]
    public void Write_PartsAboveTheWhole_AreRefused()
    {
        var document = FigureTests.Studies["twelve"] with { Counts = new SessionCounts(1, 0, 0, 0, 0) };
        var error = Assert.Throws<ArgumentException>(() => ReportDocument.Write(document));
        Assert.Contains("do not add up", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_Twice_GivesTheSameBytes() => Assert.Equal(Write("twelve"), ReportDocument.Write(Samples.TwelveConditions()));

    [Fact]
    public void Write_HostileTexts_AreEncodedEverywhere()
    {
        const string hostile = "<script>alert('x')</script>\"&\0🎮";
        var text = ReportDocument.Write(Hostile(hostile));
        Assert.DoesNotContain("<script", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("\0", text, StringComparison.Ordinal);
        var words = XDocument.Parse(text[text.IndexOf('\n', StringComparison.Ordinal)..]).Root!.Value;
        // Title, heading and figures, the factor, the exclusion and the late definition.
        Assert.True(words.Split("<script>alert('x')</script>\"&\uFFFD🎮").Length > 8);
    }

    [Fact]
    public void Write_ReferenceWithoutData_SaysSo()
    {
        var document = FigureTests.Studies["one"] with { Reference = "bench-board" };
        Assert.Contains("The reference is bench-board; it has no data.", Spaced(ReportDocument.Write(document)), StringComparison.Ordinal);
    }

    [Fact]
    public void Write_Exclusions_GiveTheirReasons()
    {
        var words = Words("twelve");
        Assert.Contains("tuesday.tern-usb-relay-layer: all 1,500 trials set aside: frame cap was off.", words, StringComparison.Ordinal);
        Assert.Contains("wednesday.tern-usb-relay-layer: 110 of 1,500 trials set aside: a cable was moved, trials 400 to 509.", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_NotEnough_SaysHowManyOfHowMany() =>
        Assert.Contains(Parse("twelve").Descendants("td"), cell => Spaced(string.Join(' ', cell.Elements().Select(part => part.Value))) == "not enough data 1,500 of 3,000 trials");

    [Fact]
    public void Write_AllCautions_AreWordedOnce()
    {
        var document = FigureTests.Studies["twelve"];
        var shown = Parse("twelve").Descendants("section").Single(section => section.Attribute("id")!.Value == "cautions").Descendants("dd").Select(item => item.Value).ToList();
        var expected = document.Cautions.Concat(document.Conditions.SelectMany(condition => condition.Cautions)).Select(Tarry.Findings.Quality.CautionWording.Sentence).ToList();
        Assert.Equal(expected.Order(StringComparer.Ordinal), shown.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Write_Pairs_AreEachInOneRow()
    {
        var rows = Parse("twelve").Descendants("section").Single(section => section.Attribute("id")!.Value == "differences").Descendants("tbody").SelectMany(body => body.Elements("tr")).Count();
        Assert.Equal(12 * 11 / 2, rows);
    }

    private static FindingsDocument Hostile(string text)
    {
        var condition = Samples.Condition("quill-usb", 3.42, 1.1);
        ConditionFinding hostile = condition with
        {
            Factors = new Dictionary<string, string> { ["device"] = text, [text] = "usb" },
            LateBeyond = new(Tarry.Metrology.Latency.FromMilliseconds(13), text),
            LateShare = Samples.Share(0.01, 0.008, 0.013),
            Mean = Samples.Latency(3.42, 0.1, method: text),
            Sessions = [condition.Sessions[0] with { ExclusionReasons = [text] }, .. condition.Sessions.Skip(1)],
            Cautions = [Samples.Caution(Tarry.Findings.Quality.CautionKind.OneUnit, text)],
        };
        return Samples.Document(text, [hostile, Samples.Condition("tern-usb", 4, 1)]) with { Version = text };
    }

    private static string Row(XElement row) => string.Join(' ', row.Elements().Select(cell => cell.Value));

    private static string Write(string study) => ReportDocument.Write(FigureTests.Studies[study]);

    private static XElement Parse(string study) => XDocument.Parse(Write(study)).Root!;

    private static string Words(string study) => Spaced(string.Join(' ', Parse(study).Element("body")!.Descendants().Where(element => !element.HasElements && element.Name.LocalName != "style").Select(element => element.Value)));

    private static string Spaced(string text) => text.Replace('\u00A0', ' ');
}
