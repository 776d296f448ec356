using Tarry.Findings.ReportIntervals;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Tests.Wording;

public sealed class ReportRateTests
{
    [Fact]
    public void Of_AnInterval_HasTheClockInIt()
    {
        // 2 ms within 3 ppm, on a clock within 40 ppm: 500 Hz within 5 parts per hundred thousand would be 0.025 Hz; hypot(3, 40) is 40.11.
        var rate = ReportRate.Of(Finding(2, 0.000006, 40))!;
        Assert.Equal(500, rate.Hz, 1e-9);
        Assert.Equal(500 * 40.1123e-6, rate.High - rate.Hz, 1e-6);
        Assert.Equal("500.000", rate.Value);
        Assert.Equal("499.980 to 500.020", rate.Bounds.Replace('\u00A0', ' '));
    }

    [Fact]
    public void Of_AnUnknownClock_HasFewDigits() => Assert.Equal("125.0", ReportRate.Of(Finding(8, 0.00001, 5000))!.Value);

    /// <summary>A full-speed function may be off by 0.25 %: USB 2.0, 7.1.11.</summary>
    [Theory]
    [InlineData(500, true)]
    [InlineData(501.2, true)]
    [InlineData(501.4, false)]
    [InlineData(1000, false)]
    [InlineData(250, false)]
    public void Is_AStatedRate_WithinWhatUsbAllowsOnly(double stated, bool same) =>
        Assert.Equal(same, ReportRate.Of(Finding(2, 0.000006, 40))!.Is(stated));

    [Fact]
    public void Of_NoInterval_IsNone()
    {
        Assert.Null(ReportRate.Of(null));
        Assert.Null(ReportRate.Of(Finding(2, 0.1, 40) with { Interval = null }));
    }

    private static ReportIntervalFinding Finding(double milliseconds, double halfWidthMs, double clockPpm) => new()
    {
        Interval = Samples.Difference(milliseconds, halfWidthMs),
        Clock = new(clockPpm, "a crystal"),
        Agreement = SlotShapeAgreement.SlotGridOnly,
    };
}
