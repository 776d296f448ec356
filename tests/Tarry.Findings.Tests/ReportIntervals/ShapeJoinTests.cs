using Tarry.Findings.Conditions;
using Tarry.Findings.ReportIntervals;
using Tarry.Metrology;

namespace Tarry.Findings.Tests.ReportIntervals;

/// <summary>Facts of the trade (common practice, no published source): 250, 125 and 100 reports a second show blocks 4, 8 and 10 ms wide.</summary>
public class ShapeJoinTests
{
    [Theory]
    [InlineData(250, 4)]
    [InlineData(125, 8)]
    [InlineData(100, 10)]
    public void ReportInterval_WithoutPressTimes_IsTheWidthOfTheBlock(double reportsASecond, double blockMs)
    {
        var condition = Pad(blockMs);
        var interval = condition.ReportInterval!.Interval!;
        Assert.Equal(1000 / reportsASecond, interval.Value.Milliseconds, 0.05 * blockMs);
        Assert.True(interval.Interval.Contains(LatencyDifference.FromMilliseconds(blockMs)));
        Assert.Equal(MethodName.BlockWidthThroughReference, interval.Method);
        Assert.Equal(SlotShapeAgreement.ShapeOnly, condition.ReportInterval.Agreement);
        Assert.NotEmpty(ReportIntervalWording.Evidence(condition.ReportInterval));
    }

    [Fact]
    public void ReportInterval_OfADeviceWithoutABlock_IsNotClaimed()
    {
        var condition = Pad(0);
        Assert.Null(condition.ReportInterval!.Interval);
        Assert.NotNull(condition.ReportInterval.Unidentified);
    }

    [Fact]
    public void Agreement_OfAWidthFarFromTheGrid_IsConflict()
    {
        var condition = Pad(8);
        var grid = condition.ReportInterval! with { Unidentified = null, Interval = Estimate(1, 0.999, 1.001) };
        Assert.Equal(SlotShapeAgreement.Conflict, ShapeJoin.Joined(condition with { ReportInterval = grid }).ReportInterval!.Agreement);
        var same = condition.ReportInterval! with { Unidentified = null, Interval = Estimate(8, 7.999, 8.001) };
        Assert.Equal(SlotShapeAgreement.Agree, ShapeJoin.Joined(condition with { ReportInterval = same }).ReportInterval!.Agreement);
    }

    private static ConditionFinding Pad(double blockMs)
    {
        var random = new SeededGenerator(11);
        double Chain() => 5 + (4.1 * random.NextDouble()) + (0.3 * random.NextNormal());
        var study = new SyntheticStudy(11) { WithShapes = true };
        study.Rates["board"] = 1000;
        foreach (var sitting in new[] { "s1", "s2" })
        {
            study.AddSession(sitting, "board", [.. Enumerable.Range(0, 1500).Select(_ => Chain() + random.NextDouble())]);
            study.AddSession(sitting, "pad", [.. Enumerable.Range(0, 1500).Select(_ => Chain() + (blockMs * random.NextDouble()))]);
        }

        return study.Analyse().Conditions.Single(condition => condition.Id == "pad");
    }

    private static Estimate<LatencyDifference> Estimate(double value, double low, double high) => new(
        LatencyDifference.FromMilliseconds(value),
        new(LatencyDifference.FromMilliseconds(low), LatencyDifference.FromMilliseconds(high)),
        0.95,
        MethodName.TwoSlotGrids,
        2000,
        2);
}
