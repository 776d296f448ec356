using System.Text.Json;
using System.Xml.Linq;
using Tarry.Output;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Tests.Commands;

/// <summary><c>tarry stick</c> through the whole program.</summary>
public class StickCommandTests
{
    [Fact]
    public async Task Procedures_AreListedWithWhatTheyAskFor()
    {
        var words = await ProgramRun.Done("stick", "procedures");
        Assert.All(StickProcedures.Names, name => Assert.Contains($"{name}: ", words, StringComparison.Ordinal));
        Assert.Contains("5 V on a 3.3 V device can destroy it", words, StringComparison.Ordinal);

        using var json = JsonDocument.Parse(await ProgramRun.Done("stick", "procedures", "--json"));
        Assert.Equal(StickProcedures.Names, json.RootElement.EnumerateArray().Select(entry => entry.GetProperty("name").GetString()!));
    }

    [Fact]
    public async Task Jig_IsWrittenToScaleWithItsUncertainty()
    {
        using var folder = new TemporaryFolder();
        var said = await ProgramRun.Done("stick", "jig", "--out", folder["jig.svg"], "--radius-mm", "10", "--print-tolerance-mm", "0.3", "--cut-tolerance-mm", "0.4", "--centring-tolerance-mm", "0");

        // 0.5 mm / (sqrt(3) x 10 mm) = 0.028868 rad = 1.654 degrees.
        Assert.Contains("1.65 degrees", said, StringComparison.Ordinal);
        var svg = XDocument.Load(folder["jig.svg"]);
        Assert.Contains("= 0.0289 rad = 1.65°", svg.Root!.Value, StringComparison.Ordinal);
        Assert.EndsWith("mm", svg.Root!.Attribute("width")!.Value, StringComparison.Ordinal);
        var impossible = await ProgramRun.Tarry("stick", "jig", "--out", folder["none.svg"], "--stops", "30");
        Assert.Equal(ExitCode.WrongUse, impossible.ExitCode);
        Assert.False(File.Exists(folder["none.svg"]));
    }

    [Fact]
    public async Task Record_OnTheSimulatedRig_SealsASessionThatIsAccepted()
    {
        using var folder = new TemporaryFolder();
        var study = folder["study"];
        await ProgramRun.Done("new", study);
        string[] record = ["stick", "record", study, "--condition", "pad", "--sitting", "monday", "--procedure", "slow-ramp", "--port", "simulated"];
        Assert.Contains("tarry condition", (await ProgramRun.Tarry(record)).Error, StringComparison.Ordinal);
        await ProgramRun.Done("condition", study, "pad", "--control", "stick");

        Assert.Contains("accepted for its procedure", await ProgramRun.Done(record), StringComparison.Ordinal);

        var session = Study.Open(study).ReadStick(new SessionKey("monday", "pad", StickProcedure.SlowRamp));
        Assert.Equal(42_000, session.Samples.Count);
        Assert.Equal("monday.pad.slow-ramp.txt", session.Record.Source!.FileName);
        Assert.Contains("The study is whole.", await ProgramRun.Done("check", study));
        Assert.Equal(ExitCode.WrongUse, (await ProgramRun.Tarry(record)).ExitCode);
        Assert.Contains("--recover", (await ProgramRun.Tarry([.. record.Select(word => word == "monday" ? "tuesday" : word), "--recover"])).Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Record_OnNoTerminal_SaysEachStepOnALineAsItBegins()
    {
        using var folder = new TemporaryFolder();
        var study = folder["study"];
        await ProgramRun.Done("new", study);
        await ProgramRun.Done("condition", study, "pad");

        var run = await ProgramRun.Tarry("stick", "record", study, "--condition", "pad", "--sitting", "monday", "--procedure", "rim-sweep", "--port", "simulated", "--seconds", "33", "--ready-seconds", "3");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal(
            [
                "in 3 s it begins. First: push to the right and stay at the gate",
                "step 1 of 4, 1.5 s: push to the right and stay at the gate",
                "step 2 of 4, 15 s: turn counter-clockwise along the gate, one turn in 3 s",
                "step 3 of 4, 1.5 s: stop, and stay at the gate",
                "step 4 of 4, 15 s: turn clockwise along the gate, one turn in 3 s",
            ],
            run.Error.Split(Environment.NewLine, StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public async Task Record_OnATerminal_CountsDownBelowTheStep()
    {
        using var folder = new TemporaryFolder();
        var study = folder["study"];
        await ProgramRun.Done("new", study);
        await ProgramRun.Done("condition", study, "pad");
        using var error = new StringWriter();

        await CommandLine.RunAsync(
            ["stick", "record", study, "--condition", "pad", "--sitting", "monday", "--procedure", "rim-sweep", "--port", "simulated"],
            new Terminal(TextWriter.Null, error, ShowsProgress: true, OutIsTerminal: false));

        var shown = error.ToString().Split('\r').Select(text => text.Trim()).ToList();
        Assert.Equal(["5 s", "4 s", "3 s", "2 s", "1 s"], shown.Where(text => text.Length == 3));
        // Once in the turns one way, once in those the other.
        Assert.Equal(2, shown.Count(text => text.StartsWith("24 s   turn 2 of 5   ", StringComparison.Ordinal)));
        Assert.Contains(shown, text => text.EndsWith("then: stop, and stay at the gate", StringComparison.Ordinal));
        // A step's line ends, so that it stays.
        Assert.Contains($"step 4 of 4, 30 s: turn clockwise along the gate, one turn in 6 s{Environment.NewLine}", error.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("17 to 660 s", "--seconds", "5")]
    [InlineData("rig keeps its own pace", "--pace", "2", "--port", "/dev/ttyACM9")]
    public async Task Record_OfWhatCannotBe_IsRefusedAndMakesNothing(string why, params string[] options)
    {
        using var folder = new TemporaryFolder();
        var study = folder["study"];
        await ProgramRun.Done("new", study);
        await ProgramRun.Done("condition", study, "pad");
        string[] port = options.Contains("--port") ? [] : ["--port", "simulated"];

        var run = await ProgramRun.Tarry(["stick", "record", study, "--condition", "pad", "--sitting", "monday", "--procedure", "rim-sweep", .. port, .. options]);

        Assert.Equal(ExitCode.WrongUse, run.ExitCode);
        Assert.Contains(why, run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(study, "recordings")));
    }

    [Fact]
    public async Task Record_WithWhatABrokenRecordingLeft_SealsItsWholeLines()
    {
        using var folder = new TemporaryFolder();
        var study = folder["study"];
        await ProgramRun.Done("new", study);
        await ProgramRun.Done("condition", study, "pad");
        Directory.CreateDirectory(Path.Combine(study, "recordings"));
        await File.WriteAllTextAsync(
            Path.Combine(study, "recordings", "monday.pad.rest.txt"),
            "tarry-stick-recording 1 {\"procedure\":\"rest\",\"board\":\"uno\",\"firmware\":\"0.1.0\",\"boot_id\":7,\"tick_hz\":16000000,\"interval_us\":1000,\"reference\":\"aref\",\"y_is_down\":true}\n"
            + "s 1000 1 -\nr 1 1000 0 1ff2001fe201\nr 3 33000 0 2",
            TestContext.Current.CancellationToken);

        var run = await ProgramRun.Tarry("stick", "record", study, "--condition", "pad", "--sitting", "monday", "--procedure", "rest", "--recover");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("not accepted for its procedure", run.Error, StringComparison.Ordinal);
        var session = Study.Open(study).ReadStick(SessionKey.Parse("monday.pad.rest"));
        Assert.Equal([511.0, 510], session.Samples.X.ToArray());
        Assert.Equal([1_023.0 - 512, 1_023 - 513], session.Samples.Y.ToArray());
        Assert.Equal([0L, 16_000], session.Samples.Ticks.ToArray());
        Assert.Equal("line 4", Assert.Single(session.Record.Refused).Place);
    }
}
