using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Findings.ReportIntervals;
using Tarry.Findings.ReportStreams;
using Tarry.Findings.Shapes;
using Tarry.Metrology;
using Tarry.Reports.Documents;
using Tarry.Statistics.Shapes;
using Tarry.Statistics.SlotGrid;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;

namespace Tarry.Reports.Tests.Documents;

public sealed class DeviceSectionTests
{
    private static readonly ConditionFinding Pad = Samples.Condition("quill-usb", 3.42, 2);

    [Fact]
    public void Build_FoundInterval_GivesItsDigitsAndTheRateBesideTheStatedOne()
    {
        var words = Words(Document(Pad));
        Assert.Contains("2.000000 1.999990 to 2.000010", words, StringComparison.Ordinal);
        Assert.Contains("500.000 499.975 to 500.025", words, StringComparison.Ordinal);
        Assert.Contains("quill-usb reports 500.000 times a second; 1,000 are stated.", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_NoInterval_SaysWhyAndWhatHelps()
    {
        var words = Words(Document(Pad with
        {
            ReportInterval = Pad.ReportInterval! with { Interval = null, Fold = null, Unidentified = new(ReportIntervalReason.PressLattice, null, []) },
        }));
        Assert.Contains("not identifiable presses too regular", words, StringComparison.Ordinal);
        Assert.Contains("Let press intervals vary at random by at least 50 ms.", words, StringComparison.Ordinal);
        Assert.DoesNotContain("times a second", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_Conflict_IsSaid() => Assert.Contains(
        "quill-usb: The distribution disagrees: its block is 5 ms wide.",
        Words(Document(Pad with { ReportInterval = Pad.ReportInterval! with { Agreement = SlotShapeAgreement.Conflict, ShapeBlockWidth = LatencyDifference.FromMilliseconds(5) } })),
        StringComparison.Ordinal);

    [Fact]
    public void Build_BoundFromAbove_IsNoLackOfData()
    {
        var words = Words(Document(Samples.Condition("quill-usb", 3.42, 1.1)));
        Assert.Contains("at most 0.40 one-sided 95 %", words, StringComparison.Ordinal);
        Assert.DoesNotContain("not enough data", words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, "two blocks added ahead by 12.3 in BIC; fits, p 0.400")]
    [InlineData(false, "two blocks added or one block the data cannot tell: 12.3 in BIC; fits, p 0.400")]
    public void Build_Shape_SaysHowSureItIs(bool decided, string text) =>
        Assert.Contains(text, Words(Document(Pad with { Shape = Shape(decided) })), StringComparison.Ordinal);

    [Fact]
    public void Build_LateLumps_AreListedWithTheirShares()
    {
        Estimate<LatencyDifference> interval = Samples.Difference(4.2, 0.1);
        var tail = new LateTailFinding
        {
            ShareByFit = Samples.Share(0.07, 0.06, 0.08),
            BlockEnd = null,
            LumpInterval = interval,
            Lumps = [new(1, LatencyDifference.FromMilliseconds(4.2), 141, Samples.Share(0.0588, 0.05, 0.07)), new(2, LatencyDifference.FromMilliseconds(8.4), 0, Samples.Share(0, 0, 0.002))],
            P999 = Samples.Latency(18.4, 0.6),
        };
        var words = Words(Document(Pad with { LateTail = tail }));
        Assert.Contains("every 4.2 ms: 5.9, 0.0 %", words, StringComparison.Ordinal);
        Assert.Contains("p99.9, ms", words, StringComparison.Ordinal);
        Assert.Contains("18.4 17.8 to 19.0", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_ReportStreams_StandBesideTheDeclaredInterval()
    {
        var stream = new ReportStreamFinding
        {
            Session = new SessionKey("monday", "quill-usb"),
            Device = "3",
            Endpoint = new ReportEndpoint { Number = 0x81, Transport = "usb", DeclaredIntervalUs = 1000 },
            Reports = 12_000,
            Interval = Samples.Latency(2, 0.00001, 1, 12_000),
            Slots = new SlotCounts(11_990, 4, 0, 2, 0.0031),
            Histogram = null,
        };
        var words = Words(Document(Pad) with { ReportStreams = [stream] });
        Assert.Contains("monday.quill-usb 3, usb 0x81 12,000 1 2.000000 1.999990 to 2.000010 2.000 4 2 3.1", words, StringComparison.Ordinal);
    }

    private static FindingsDocument Document(ConditionFinding condition) => Samples.Document("A study", [condition]);

    private static ShapeFinding Shape(bool decided) => new()
    {
        Family = ShapeFamily.UniformUniformNormal,
        Parameters = new Dictionary<string, double>(),
        LateShare = 0,
        Candidates = [new(ShapeFamily.UniformUniformNormal, 100, 8), new(ShapeFamily.UniformNormal, 112.3, 7)],
        MarginInBic = 12.3,
        Decided = decided,
        Fit = new(31, 30, 0.4),
        Curve = new(0, 0.1, [0, 1, 0]),
        SessionShift = null,
        Trials = 6000,
        Sessions = 4,
    };

    private static string Words(FindingsDocument document)
    {
        var texts = DeviceSection.Build(document, [])!.DescendantNodes().OfType<XText>().Select(text => text.Value);
        return string.Join(' ', texts).Replace('\u00A0', ' ');
    }
}
