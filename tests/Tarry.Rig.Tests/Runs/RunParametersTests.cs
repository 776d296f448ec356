using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies.Sessions;

namespace Tarry.Rig.Tests.Runs;

public sealed class RunParametersTests : IDisposable
{
    private readonly TemporaryStudy temporary = new();

    public void Dispose() => temporary.Dispose();

    [Theory]
    [InlineData("edge", 100_000, 149_999, 20_000, 60_000, 10_000, "50 ms")]
    [InlineData("edge", 120_000, 70_000, 20_000, 60_000, 10_000, "50 ms")]
    [InlineData("edge", 1_000, 70_000, 20_000, 60_000, 10_000, "shortest press interval")]
    [InlineData("edge", 70_000, 60_000_001, 20_000, 60_000, 10_000, "longest press interval")]
    [InlineData("edge", 70_000, 120_000, 50, 60_000, 10_000, "hold")]
    [InlineData("edge", 70_000, 120_000, 20_000, 30_000_001, 10_000, "time-out")]
    [InlineData("edge", 70_000, 120_000, 20_000, 60_000, -1, "re-arm time")]
    [InlineData("sound", 70_000, 120_000, 20_000, 60_000, 10_000, "sound")]
    public void CaptureRun_SettingsThatCannotBe_AreRefusedByName(string response, long minimum, long maximum, long hold, long timeOut, long rearm, string named)
    {
        var settings = new RunSettings(response, minimum, maximum, hold, timeOut, rearm, 1);
        var refusal = Assert.Throws<RunSettingsException>(() => Make(new RunRequest { Key = TemporaryStudy.Key, Settings = settings }));
        Assert.Contains(named, refusal.Message, StringComparison.Ordinal);
        Assert.NotEmpty(refusal.Remedy);
    }

    [Theory]
    [InlineData("dac", 0, 65_535, 30_000, 20_000, "released")]
    [InlineData("dac", 0, 65_535, 65_536, 5_000, "threshold")]
    [InlineData("switch", 0, 65_535, 30_000, 5_000, "ramp")]
    [InlineData("dac", 0, 65_535, 30_000, 1_000_001, "released")]
    public void CaptureRun_AxisThatCannotBe_IsRefused(string drive, int low, int high, int threshold, long rampUs, string named)
    {
        var settings = RunRequest.DefaultSettings with { Actuation = new Actuation("axis", new AxisActuation(drive, low, high, threshold, rampUs)) };
        var refusal = Assert.Throws<RunSettingsException>(() => Make(new RunRequest { Key = TemporaryStudy.Key, Settings = settings }));
        Assert.Contains(named, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void CaptureRun_NarrowIntervalByName_IsAllowed() =>
        Make(new RunRequest { Key = TemporaryStudy.Key, Settings = RunRequest.DefaultSettings with { IntervalMinUs = 100_000, IntervalMaxUs = 100_400 }, AllowNarrowInterval = true });

    [Theory]
    [InlineData(0L, null)]
    [InlineData((long)uint.MaxValue, null)]
    [InlineData(null, 0.0)]
    [InlineData(null, double.NaN)]
    public void CaptureRun_TargetThatCannotBe_IsRefused(long? trials, double? halfWidthMs) =>
        Assert.Throws<RunSettingsException>(() => Make(new RunRequest { Key = TemporaryStudy.Key, Trials = trials, HalfWidthMs = halfWidthMs }));

    private CaptureRun Make(RunRequest request) =>
        new(temporary.Study, temporary.Held, request, new SimulatedRigPortSource(new SimulatedDevice(), new SimulatedRigOptions()));
}
