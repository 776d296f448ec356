using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Statistics.Tests.SlotGrid;

public sealed class ReportIntervalSearchTests
{
    private static readonly double[] Intervals = [1, 1.4, 2, 4, 8, 10];

    [Fact]
    public void Interval_BehindJitteredFrames_IsFoundAndCovered()
    {
        // Six 95 % intervals: fewer than 4 that hold the truth have probability 2e-3 (binomial).
        var covered = 0;
        foreach (var (run, slot) in Intervals.Index())
        {
            var device = new SimulatedSlots { SlotMs = slot, Frames = FrameKind.Jittered, Trials = 1200 };
            var found = Assert.IsType<ReportIntervalFound>(Search(device, (ulong)run, slotMs: run % 2 == 0 ? 1 : null));
            Assert.Equal(device.TrueIntervalMs, found.IntervalMs, 0.002 * slot);
            Assert.Equal(4.1 * (1 + 20e-6), found.FrameIntervalMs!.Value, 1e-5);
            Assert.True(found.HighMs - found.LowMs < 0.01 * slot);
            Assert.All(found.Series.Where(series => series.FixedDelayMs is not null), series => Assert.Equal(device.FixedMs, series.FixedDelayMs!.Value, 0.1));
            covered += found.LowMs <= device.TrueIntervalMs && found.HighMs >= device.TrueIntervalMs ? 1 : 0;
        }

        Assert.True(covered >= 4, $"{covered} of 6 intervals hold the truth.");
    }

    [Theory]
    [InlineData(FrameKind.Walking, 0.1)]
    [InlineData(FrameKind.Walking, 0.01)]
    [InlineData(FrameKind.FreeRunning, 0)]
    [InlineData(FrameKind.None, 0)]
    public void Interval_WithoutAStableGridOfFrames_IsFoundAllTheSame(FrameKind frames, double jitterMs)
    {
        foreach (var slot in (ReadOnlySpan<double>)[2, 8])
        {
            var device = new SimulatedSlots { SlotMs = slot, Frames = frames, FrameJitterMs = jitterMs, Trials = 1200 };
            var found = Assert.IsType<ReportIntervalFound>(Search(device, 4, 1));
            Assert.Equal(device.TrueIntervalMs, found.IntervalMs, 5e-6 * slot);
            Assert.All(found.Series, series => Assert.Null(series.FixedDelayMs));
        }
    }

    [Theory]
    [InlineData(FrameKind.None)]
    [InlineData(FrameKind.Shown)]
    [InlineData(FrameKind.Jittered)]
    [InlineData(FrameKind.Walking)]
    [InlineData(FrameKind.FreeRunning)]
    public void DeviceWithoutSlots_GetsNoInterval(FrameKind frames) =>
        Assert.IsType<ReportIntervalRefused>(Search(new SimulatedSlots { SlotMs = null, Frames = frames, LateShare = 0.02, LumpShare = 0.03, Trials = 600 }, 2, 1));

    [Fact]
    public void SlotsThatLeaveAQuarterMillisecond_AreRefusedWithTheirImages()
    {
        var refused = Assert.IsType<ReportIntervalRefused>(Search(new SimulatedSlots { SlotMs = 0.25, FrameJitterMs = 0, Trials = 1000 }, 1, 1));
        Assert.True(refused.Reason is ReportIntervalReason.ImagesNotToldApart or ReportIntervalReason.NoGridSeen, refused.Reason.ToString());
    }

    [Fact]
    public void ABeatLongerThanTheSession_IsRefused()
    {
        var device = new SimulatedSlots { SlotMs = 4, SlotPpm = -10, FrameMs = 4, Trials = 1200 };
        var refused = Assert.IsType<ReportIntervalRefused>(Search(device, 1, 1));
        Assert.Equal(ReportIntervalReason.Beat, refused.Reason);
        Assert.Null(refused.UpperMs);
    }

    [Fact]
    public void TheScreensRefreshBehindFrames_IsNotTakenForADevice()
    {
        var refused = Assert.IsType<ReportIntervalRefused>(Search(new SimulatedSlots { SlotMs = 2, RefreshMs = 6.94 }, 1, 1));
        Assert.Equal(ReportIntervalReason.FurtherGrid, refused.Reason);
    }

    [Fact]
    public void WithoutAReference_AGridIsNotAttributed_UnlessTheMakerStatesIt()
    {
        var device = new SimulatedSlots { SlotMs = 8, Frames = FrameKind.None, Trials = 1000 };
        var random = new SeededGenerator(8);
        PressSeries[] series = [device.Session("one", random), device.Session("two", random)];
        var chain = ChainGrids.Shared([series]);
        var refused = Assert.IsType<ReportIntervalRefused>(ReportIntervalSearch.Of(series, chain));
        Assert.Equal(ReportIntervalReason.NotAttributed, refused.Reason);
        Assert.Equal(device.TrueIntervalMs, Assert.Single(refused.ChoicesMs), 1e-3);
        Assert.IsType<ReportIntervalFound>(ReportIntervalSearch.Of(series, chain, 8));
    }

    [Fact]
    public void ARestartOfTheRig_LeavesSeriesOfTheirOwnClock()
    {
        // Two pieces of a session, each with slots and frames at phases of its own.
        var device = new SimulatedSlots { SlotMs = 4, Trials = 700 };
        var reference = new SimulatedSlots { SlotMs = 1, SlotPpm = 0, Trials = 1400 };
        var random = new SeededGenerator(12);
        var chain = ChainGrids.Of([reference.Session("one", random)], 1);
        var found = Assert.IsType<ReportIntervalFound>(ReportIntervalSearch.Of([device.Session("one", random), device.Session("one", random)], chain));
        Assert.Equal(device.TrueIntervalMs, found.IntervalMs, 5e-5);
    }

    [Fact]
    public void ReferenceOfAChain_ShowsTheFramesLinesAsTheirs()
    {
        var reference = new SimulatedSlots { SlotMs = 1, SlotPpm = 0, Trials = 1500 };
        var grid = Assert.Single(ChainGrids.Of([reference.Session("one", new SeededGenerator(1))], 1).Sittings);
        Assert.Equal(4.1 * (1 + 20e-6), grid.FrameIntervalMs!.Value, 1e-4);
        Assert.Contains(grid.Lines, line => line is { Owner: ChainLineOwner.Frames, FrameMultiple: 1 });
        Assert.Contains(grid.Lines, line => line is { Owner: ChainLineOwner.Frames, FrameMultiple: 2 });
        Assert.DoesNotContain(grid.Lines, line => line.Owner == ChainLineOwner.Unknown);
    }

    [Fact]
    public void PressesOnALattice_AreTold()
    {
        var random = new SeededGenerator(3);
        bool IsLattice(double range) => PressLattice.IsIn(new SimulatedSlots { SlotMs = 8, ShortestMs = 100 - (range / 2), LongestMs = 100 + (range / 2) }.Session("one", random));
        Assert.True(IsLattice(0.4));
        Assert.True(IsLattice(4));
        Assert.False(IsLattice(50));
    }

    private static ReportIntervalOutcome Search(SimulatedSlots device, ulong run, double? slotMs)
    {
        var random = SeededGenerator.ForPart(2026, run);
        var own = device with { SlotMs = 1, SlotPpm = 0, LateShare = 0, LumpShare = 0, BeforeMs = 0.1 };
        PressSeries[] reference = [own.Session("one", random), own.Session("two", random)];
        PressSeries[] series = [device.Session("one", random), device.Session("two", random)];
        var chain = ChainGrids.Of(reference, slotMs);
        return ReportIntervalSearch.Of(series, chain.WithOwn(ReportIntervalSearch.Of(reference, chain, slotMs)));
    }
}
