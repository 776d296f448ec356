using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Tests.HostEvents;

public class EchoCommandTests
{
    [Fact]
    public async Task Run_ByEchoOnTheSimulatedBench_MeasuresDeviceAndLinkWithoutAScreen()
    {
        using var folder = new TemporaryFolder();
        string[] run = await Declared(folder);
        var said = await ProgramRun.Done([.. run, "--response", "echo", "--trials", "300"]);
        Assert.Contains("300 trials on disk: 300 responses", said);
        Assert.Contains("presses echoed", said);
        var session = Study.Open(folder["study"]).Read(new SessionKey("monday", "pad"));

        // The default device answers after 2 ms and a wait of up to 1 ms; no frame and no screen. The host's wake and the byte are below 0.3 ms.
        var latencies = session.Trials.Where(trial => trial.Outcome == Outcome.Response).Select(trial => trial.LatencyTicks!.Value / 16_000.0).ToList();
        Assert.All(latencies.Order().Take(290), latency => Assert.InRange(latency, 2.0, 3.3));
    }

    [Theory]
    [InlineData("--echo-device", "--response", "edge", "--echo-device", "simulated")]
    [InlineData("--echo-device", "--response", "echo", "--echo-device", "/dev/input/event7")]
    [InlineData("ABS_Z", "--response", "echo", "--echo-code", "ABS_Z")]
    public async Task Run_WithEchoOptionsThatDoNotFit_SaysWhatToDo(string named, params string[] options)
    {
        using var folder = new TemporaryFolder();
        string[] command = await Declared(folder);
        var run = await ProgramRun.Tarry([.. command, .. options]);
        Assert.NotEqual(0, run.ExitCode);
        Assert.Contains(named, run.Error);
    }

    [Fact]
    public async Task Run_ByEchoOnARealPortWithoutADevice_SaysWhatToDo()
    {
        using var folder = new TemporaryFolder();
        string[] command = await Declared(folder);
        var run = await ProgramRun.Tarry([.. command[..^1], "/dev/null", "--response", "echo"]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("tarry host devices", run.Error);
    }

    private static async Task<string[]> Declared(TemporaryFolder folder)
    {
        await ProgramRun.Done("new", folder["study"], "--reference", "pad");
        await ProgramRun.Done("condition", folder["study"], "pad");
        return ["run", folder["study"], "--condition", "pad", "--sitting", "monday", "--port", "simulated"];
    }
}
