using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Reports.Documents;

namespace Tarry.Reports.Tests.Documents;

public sealed class ChainAndBudgetTests
{
    [Fact]
    public void Chain_OneCapForAll_SaysWhatItAddsAndThatItDropsOut()
    {
        // 244 frames a second are one every 4.098 ms.
        var words = Words("chain", Samples.TwelveConditions());
        Assert.Contains("A frame cap of 244 frames a second (one every 4.098 ms) adds a wait of up to 4.098 ms", words, StringComparison.Ordinal);
        Assert.Contains("The cap is the same for every condition", words, StringComparison.Ordinal);
        Assert.Contains("Neither the study file nor the sessions state the contact, software layer and screen refresh.", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Chain_CapsThatDiffer_AreSaidToMatter()
    {
        var words = Words("chain", Two([250], [60, 250]));
        Assert.Contains("60 frames a second (one every 16.667 ms) and 250 frames a second (one every 4 ms)", words, StringComparison.Ordinal);
        Assert.Contains("differ by this wait as well", words, StringComparison.Ordinal);
        Assert.DoesNotContain("drops out", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Chain_NoCapStated_SaysThatTheWaitIsNotKnown() =>
        Assert.Contains("how much of the latencies is the wait for a frame is not known", Words("chain", Two([], [])), StringComparison.Ordinal);

    [Fact]
    public void Chain_OneConditionWithoutCap_NamesIt() =>
        Assert.Contains("No session of b states a frame cap.", Words("chain", Two([250], [])), StringComparison.Ordinal);

    [Fact]
    public void Budget_NotCalibrated_SaysSoAndGivesCorrectedMeansWithSources()
    {
        var words = Words("budget", Samples.TwelveConditions());
        Assert.Contains("The rig was not calibrated: limits of its class stand in", words, StringComparison.Ordinal);
        Assert.Contains("3.42", words, StringComparison.Ordinal);
        Assert.Contains("no clock fit: within 0.5 %", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Budget_BasisWithMicroseconds_WritesTheUnitAndLeavesTheWords()
    {
        var document = Samples.TwelveConditions();
        var said = document with
        {
            Conditions = [.. document.Conditions.Select(condition => condition with
            {
                Budget = condition.Budget is { } budget ? budget with { Inputs = [.. budget.Inputs.Select(input => input with { Basis = "parts of the usual class, within 18 us, twice 9 us" })] } : null,
            })],
        };
        Assert.Contains("parts of the usual class, within 18 µs, twice 9 µs", Words("budget", said), StringComparison.Ordinal);
    }

    [Fact]
    public void Budget_NoConditionHasOne_IsLeftOut()
    {
        var document = Samples.TwelveConditions();
        var without = document with { Conditions = [.. document.Conditions.Select(condition => condition with { Budget = null })] };
        Assert.DoesNotContain(Sections(without), section => section.Attribute("id")!.Value == "budget");
    }

    [Fact]
    public void Methods_EveryMethodOfFindings_HasItsFormulaSourceAndPage()
    {
        var names = typeof(MethodName).GetFields().Where(field => field.IsLiteral).Select(field => (string)field.GetRawConstantValue()!);
        Assert.All(names, name =>
        {
            var text = MethodText.Of(name);
            Assert.NotNull(text);
            Assert.True(File.Exists(Path.Combine(Root(), text.Page)), $"{text.Page} is missing");
        });
    }

    private static FindingsDocument Two(double[] capsOfA, double[] capsOfB) => Samples.Document(
        "Two",
        [WithCaps(Samples.Condition("a", 3, 1, reference: true), capsOfA), WithCaps(Samples.Condition("b", 4, 1), capsOfB)]);

    private static ConditionFinding WithCaps(ConditionFinding condition, double[] caps) =>
        condition with { Chain = condition.Chain with { FrameCapsHz = caps } };

    private static IEnumerable<XElement> Sections(FindingsDocument document) =>
        XDocument.Parse(ReportDocument.Write(document)).Descendants("section");

    private static string Words(string section, FindingsDocument document) =>
        Sections(document).Single(element => element.Attribute("id")!.Value == section).Value.Replace('\u00A0', ' ');

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Tarry.slnx")))
        {
            folder = folder.Parent!;
        }

        return folder.FullName;
    }
}
