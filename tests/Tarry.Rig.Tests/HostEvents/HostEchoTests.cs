using System.Globalization;
using System.Text.RegularExpressions;
using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Tests.Runs;
using Tarry.Studies.Trials;

namespace Tarry.Rig.Tests.HostEvents;

/// <summary>The echo on the simulated bench: the same code answers as on a real one, in the bench's time.</summary>
public partial class HostEchoTests
{
    // A byte of ten bits at 250,000 baud.
    private const double ByteUs = 40;
    private const double TickUs = 1 / 16.0;

    private static readonly RunRequest Request = new()
    {
        Key = TemporaryStudy.Key,
        Trials = 400,
        Settings = RunRequest.DefaultSettings with { Response = "echo" },
    };

    private static readonly SimulatedDevice Device = new()
    {
        FixedDelayMs = 1.5, ReportIntervalMs = 1, FrameIntervalMs = 4.1, DisplayDelayMs = 5, SensorNoiseSdMs = 0.3, MissProbability = 0.02,
    };

    [Fact]
    public void Run_ByEcho_MeasuresTheDeviceUpToTheHostAndWhatTheHostAdds()
    {
        var options = new SimulatedRigOptions();
        var bench = new SimulatedRigPortSource(Device, options);
        using var study = new TemporaryStudy();
        using var echo = Echo(bench);
        var session = new CaptureRun(study.Study, study.Held, Request, bench, echo: echo).Run(TestContext.Current.CancellationToken).Session!;

        var truth = bench.Injected.ToDictionary(press => (long)press.Sequence, press => press.LatencyUs);
        Assert.Equal(400, session.Trials.Count);
        Assert.Equal(truth.Values.Count(latency => latency is not null), echo.Delays.Count);
        Assert.Equal(400 - (int)echo.Delays.Count, session.Trials.Count(trial => trial.Outcome == Outcome.Missed));
        var added = session.Trials.Where(trial => trial.Outcome == Outcome.Response)
            .Select(trial => (trial.LatencyTicks!.Value * TickUs) - truth[trial.Sequence]!.Value)
            .ToList();

        // Screen and sensor are not in it: what is added is the host's wake and one byte, and what a frame ahead makes it wait, 80 bytes at most.
        Assert.All(added, us => Assert.InRange(us, options.HostWakeUs + ByteUs - TickUs, options.HostWakeUs + options.HostWakeJitterUs + (81 * ByteUs) + TickUs));
        var behind = echo.BehindAFrame;
        Assert.InRange(behind, 0, 8);
        var free = added.Order().Take(added.Count - (int)behind).ToList();
        Assert.All(free, us => Assert.InRange(us, options.HostWakeUs + ByteUs - TickUs, options.HostWakeUs + options.HostWakeJitterUs + ByteUs + TickUs));

        // What the host says that it took is what the trials have more than the truth and the byte: to the rounding of a microsecond.
        Assert.InRange(echo.Delays.QuantileUs(0.5)!.Value - (added.Order().ElementAt(added.Count / 2) - ByteUs), -2, 2);
        Assert.Contains(session.Record.Events, text => text.StartsWith("echo: any button of Simulated pad", StringComparison.Ordinal));
        var summary = Assert.Single(session.Record.Events, text => text.Contains("presses echoed", StringComparison.Ordinal));
        Assert.Equal(echo.Delays.Count, long.Parse(Presses().Match(summary).Groups[1].Value, CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Run_ByEcho_ThroughARestartAndAnUnplug_GoesOnAnswering()
    {
        var bench = new SimulatedRigPortSource(Device with { MissProbability = 0 }, new SimulatedRigOptions { RestartsAtTrials = [100], UnplugsAfterTrials = [250] });
        using var study = new TemporaryStudy();
        using var echo = Echo(bench);
        var session = new CaptureRun(study.Study, study.Held, Request, bench, echo: echo).Run(TestContext.Current.CancellationToken).Session!;
        Assert.Equal(400, session.Trials.Count);

        // Unplugged, the rig presses until it holds 24 trials, and nothing answers these.
        Assert.InRange(session.Trials.Count(trial => trial.Outcome == Outcome.Missed), 1, 25);
        Assert.InRange(echo.Unsent, 1, 25);
        Assert.All(session.Trials.Where(trial => trial.Outcome == Outcome.Response), trial => Assert.InRange(trial.LatencyTicks!.Value * TickUs, 1500, 1500 + 1000 + 230 + (81 * ByteUs)));
    }

    [Fact]
    public void Run_ByEchoWithoutADevice_OrADeviceWithoutEcho_SaysWhatToDo()
    {
        var bench = new SimulatedRigPortSource(Device, new SimulatedRigOptions());
        using var study = new TemporaryStudy();
        using var echo = Echo(bench);
        Assert.Contains("--echo-device", Assert.Throws<RunSettingsException>(() => new CaptureRun(study.Study, study.Held, Request, bench)).Remedy);
        Assert.Throws<RunSettingsException>(() => new CaptureRun(study.Study, study.Held, new RunRequest { Key = TemporaryStudy.Key }, bench, echo: echo));
    }

    private static HostEcho Echo(SimulatedRigPortSource bench) =>
        new(bench.HostInput, EchoTrigger.Of(bench.HostInput.Description, null, null, false));

    [GeneratedRegex(@"(\d+) presses echoed")]
    private static partial Regex Presses();
}
