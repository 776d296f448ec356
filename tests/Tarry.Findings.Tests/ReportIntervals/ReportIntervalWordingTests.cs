using Tarry.Findings.ReportIntervals;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.Tests.ReportIntervals;

public class ReportIntervalWordingTests
{
    public static TheoryData<ReportIntervalReason> Reasons => [.. Enum.GetValues<ReportIntervalReason>()];

    [Theory]
    [MemberData(nameof(Reasons))]
    public void EveryReason_HasWordsForATableASentenceAndARemedy(ReportIntervalReason reason)
    {
        var unidentified = new UnidentifiedInterval(reason, null, []);
        Assert.InRange(ReportIntervalWording.Words(reason).Length, 1, 24);
        Assert.EndsWith(".", ReportIntervalWording.Reason(unidentified), StringComparison.Ordinal);
        Assert.EndsWith(".", ReportIntervalWording.Remedy(unidentified), StringComparison.Ordinal);
    }
}
