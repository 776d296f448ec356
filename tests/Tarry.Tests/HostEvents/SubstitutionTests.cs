using Tarry.Imports.Recordings;
using Tarry.Imports.Sticks;
using Tarry.Rig.HostEvents.Recording;
using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Tests.HostEvents;

/// <summary>Levels that the rig sets while the host records a device.</summary>
public class SubstitutionTests
{
    private const string Header = "tarry-host-recording 1 {\"device\":\"Quill 2\",\"transport\":\"host-events\",\"clock\":\"kernel\",\"codes\":[\"3:0\",\"3:1\"],\"axes\":[{\"column\":\"abs_x\",\"minimum\":0,\"maximum\":255}]}";

    [Fact]
    public void Levels_GoIntoTheRecordingInOrderAndOnce()
    {
        using var folder = new TemporaryFolder();
        var now = 0L;
        using var steps = LevelSteps.Open(new SimulatedRigPortSource(new SimulatedDevice(), new SimulatedRigOptions()), 0.5, () => now += 1_000, TestContext.Current.CancellationToken);
        Assert.Equal(86, steps.Left);
        using (var recording = new RecordingFile(folder["levels.txt"], Header))
        {
            Assert.True(steps.Step(0, recording));
            Assert.True(steps.Step(0.49, recording));
            Assert.True(steps.Step(0.5, recording));
            for (var index = 2; index < 86; index++)
            {
                steps.Step(index * 0.5, recording);
            }

            Assert.False(steps.Step(43, recording));
            recording.AddLine("500 0000000000000000");
        }

        var levels = RecordedSession.LevelsOf(folder["levels.txt"]);
        // 33 levels from nothing to all and back, then a quarter and three quarters in turn.
        Assert.Equal(86, levels.Count);
        Assert.Equal((1_000 - 500, 2_000 - 500, 0), levels[0]);
        Assert.Equal([2_048, 65_535, 65_535, 63_487], new[] { levels[1].Level, levels[32].Level, levels[33].Level, levels[34].Level });
        Assert.Equal([16_384, 49_151, 16_384], levels.Skip(66).Take(3).Select(level => level.Level));
    }

    [Fact]
    public void Reports_BetweenLevels_HaveThemAndThoseAtAChangeHaveNone()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("substitution.txt", Header + "\n1000 0000000000000000\nl 2000 3000 32768\n2500 7f00000000000000\n3000 7f00000000000000\n3001 8000000000000000\nl 9000 9500 65535\n8999 8000000000000000\n9501 ff00000000000000\n");
        var key = new SessionKey("monday", "pad", StickProcedure.Substitution);
        var (reports, import) = RecordedSession.Read(file, key, _ => ([], false));
        var options = new StickReportOptions
        {
            X = new StickRange(0, 255, 1),
            Y = new StickRange(0, 255, 1),
            Levels = [.. RecordedSession.LevelsOf(file).Select(level => new LevelChange(level.Before, level.After, level.Level / 65_535.0))],
            LevelUncertainty = 0.002,
        };
        var session = StickReportImport.Of(reports, null, options, new RecordingTarget(key, []), import.FileName, import.Sha256, import.Format).StickSessions.Single();

        Assert.Equal(0, import.RefusedTotal);
        Assert.Equal((StickStimulus.Level, 0.002), (session.Setup.Stimulus, session.Setup.StimulusUncertainty));
        Assert.Equal([0.0, 127, 127, 128, 128, 255], session.Samples.X.ToArray());
        Assert.Equal([double.NaN, double.NaN, double.NaN, 32_768 / 65_535.0, 32_768 / 65_535.0, 1], session.Samples.Stimulus.ToArray());
    }

    [Fact]
    public async Task Record_OfASubstitutionOnAMockedPad_KnowsTheLevelsOfItsReports()
    {
        const string pad = "/dev/input/event7";
        using var folder = new TemporaryFolder();
        await ProgramRun.Done("new", folder["study"]);
        await ProgramRun.Done("condition", folder["study"], "pad", "--control", "stick");
        // The replay writes its reports at once, and waits for a reader where they are many. Stamps half a second apart from now on last longer than the program takes to begin.
        var begin = TimeProvider.System.GetUtcNow().ToUnixTimeMilliseconds() * 1_000;
        var reports = Enumerable.Range(0, 50).Select(index => (begin + (500_000L * index), new (ushort, ushort, int)[] { (3, 0, index), (3, 1, -index) }));
        var said = await new MockedDevices(folder).WithPad(pad, reports, 0x130)
            .Tarry("host", "record", "study", "--condition", "pad", "--sitting", "monday", "--device", pad, "--procedure", "substitution", "--port", "simulated", "--level-seconds", "0.05");

        Assert.Contains("monday.pad.substitution", said, StringComparison.Ordinal);
        var session = Study.Open(folder["study"]).ReadStick(SessionKey.Parse("monday.pad.substitution"));
        var known = session.Samples.Stimulus.ToArray().Where(level => !double.IsNaN(level)).ToList();
        Assert.True(known.Count >= 3, $"{known.Count} of {session.Samples.Count} reports have a level");
        Assert.True(known.Count < session.Samples.Count);
        Assert.All(known, level => Assert.Equal(Math.Round(level * 32), level * 32, 0.01));
    }

    [Fact]
    public async Task Record_OfASubstitutionWithoutARig_SaysWhatToDo()
    {
        using var folder = new TemporaryFolder();
        await ProgramRun.Done("new", folder["study"]);
        await ProgramRun.Done("condition", folder["study"], "pad");
        string[] record = ["host", "record", folder["study"], "--condition", "pad", "--sitting", "monday", "--device", "/dev/input/event9999"];

        Assert.Contains("--port", (await ProgramRun.Tarry([.. record, "--procedure", "substitution"])).Error, StringComparison.Ordinal);
        Assert.Contains("--procedure substitution", (await ProgramRun.Tarry([.. record, "--procedure", "rest", "--port", "simulated"])).Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(folder["study"], "sessions")));
    }
}
