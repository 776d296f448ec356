using Tarry.Findings.Budgets;
using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Studies.Calibrations;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Tests.Budgets;

public class SessionChainTests
{
    private static readonly RigCalibration ByLight = new(
        DateTimeOffset.UnixEpoch, "uno", "0.1.0", 250_000, "light", false, 128, new ThresholdRange(40, 210), 1000, 20, 2.4, 1e6, 0.3, null);

    private static readonly Dictionary<string, RigCalibration> Calibrations = new()
    {
        ["0001"] = ByLight,
        ["0002"] = ByLight with { OwnDelayUs = 21, ThroughActuator = true },
        ["0003"] = ByLight with { Response = "edge", LightThreshold = null },
    };

    [Theory]
    [InlineData(null, new[] { UncertaintySource.ClockRate, UncertaintySource.Tick, UncertaintySource.ThresholdDelay, UncertaintySource.ActuatorDelay, UncertaintySource.LoopBackDelay })]
    [InlineData("0001", new[] { UncertaintySource.ClockRate, UncertaintySource.Tick, UncertaintySource.ActuatorDelay, UncertaintySource.LoopBackDelay })]
    [InlineData("0002", new[] { UncertaintySource.ClockRate, UncertaintySource.Tick, UncertaintySource.LoopBackDelay })]
    [InlineData("0003", new[] { UncertaintySource.ClockRate, UncertaintySource.Tick, UncertaintySource.ThresholdDelay, UncertaintySource.ActuatorDelay, UncertaintySource.LoopBackDelay })]
    public void Inputs_LeaveOutWhatTheLoopBackHasInIt(string? calibration, UncertaintySource[] expected) =>
        Assert.Equal(expected, Chain(calibration).Inputs.Select(input => input.Source));

    [Fact]
    public void Inputs_WithAFit_TakeItsUncertaintyAndTheHosts()
    {
        var inputs = Chain("0001", new ClockFitRecord(3000, 0.5, 12, 30)).Inputs;
        Assert.Equal(0.5, inputs.Single(input => input.Source == UncertaintySource.ClockRate).StandardUncertainty);
        Assert.Equal(10, inputs.Single(input => input.Source == UncertaintySource.ClockRate).DegreesOfFreedom);

        // GUM 4.3.7: +-50 ppm, rectangular.
        Assert.Equal(50 / Math.Sqrt(3), inputs.Single(input => input.Source == UncertaintySource.HostClock).StandardUncertainty, 1e-12);
    }

    [Fact]
    public void Inputs_OfFourMicrosecondTicks_AreRectangularOverATick() =>
        Assert.Equal(4 / Math.Sqrt(3), Chain(null).Inputs.Single(input => input.Source == UncertaintySource.Tick).StandardUncertainty, 1e-12);

    [Theory]
    [InlineData(UncertaintySource.ThresholdDelay, "0001", "0001", true)]
    [InlineData(UncertaintySource.LoopBackDelay, "0001", "0002", false)]
    [InlineData(UncertaintySource.LoopBackDelay, "0001", null, false)]
    [InlineData(UncertaintySource.ActuatorDelay, "0001", null, true)]
    [InlineData(UncertaintySource.Tick, "0001", "0001", true)]
    public void Shares_IsAskedOfTheSameSensorAndCalibration(UncertaintySource source, string? a, string? b, bool expected) =>
        Assert.Equal(expected, Chain(a).Shares(source, Chain(b)));

    [Fact]
    public void Shares_TickOfLatenciesThatDoNotSpread_IsNotCommon() =>
        Assert.False(Chain(null, spreadMs: 0).Shares(UncertaintySource.Tick, Chain(null)));

    [Fact]
    public void Shares_ClockThatWasFittedTwice_IsNotCommon()
    {
        var fit = new ClockFitRecord(3000, 0.5, 12, 30);
        Assert.False(Chain(null, fit).Shares(UncertaintySource.ClockRate, Chain(null, fit)));
        Assert.True(Chain(null).Shares(UncertaintySource.ClockRate, Chain(null)));
    }

    private static SessionChain Chain(string? calibration, ClockFitRecord? fit = null, double spreadMs = 1)
    {
        var key = new SessionKey("a", "pad");
        return new SessionChain(
            new SessionSample
            {
                Key = key,
                ResolutionMs = 0,
                Record = new SessionRecord
                {
                    Key = key,
                    Board = "uno",
                    Firmware = "0.1.0",
                    Segments = [new Segment(1, 1, 250_000, fit)],
                    Run = new RunSettings("light", 70_000, 120_000, 20_000, 60_000, 10_000, 1),
                    Calibration = calibration,
                },
                Counts = new SessionCounts(3, 0, 0, 0, 0),
                Latencies = new Sample([10, 10 + spreadMs, 10 - spreadMs]),
                Sequences = [1, 2, 3],
                PressTimesMs = [],
                IntervalCensored = false,
                ExclusionReasons = [],
            },
            Calibrations);
    }
}
