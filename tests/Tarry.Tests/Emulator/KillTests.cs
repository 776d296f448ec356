using System.Diagnostics;
using System.Text.Json;
using Tarry.Metrology;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Tests.Emulator;

/// <summary>Kills a run again and again while the rig goes on pressing.</summary>
public class KillTests
{
    private const int Kills = 50;

    [Fact]
    public async Task Run_KilledAtFiftyRandomInstants_LosesNothingThatItShowed()
    {
        using var folder = new TemporaryFolder();
        using var bench = new EmulatedBench(folder, "328p-16", "--slot-us", "2000", "--noise-us", "100", "--miss-share", "0.01");
        var study = folder["study"];
        await ProgramRun.Done("new", study, "--reference", "pad");
        await ProgramRun.Done("condition", study, "pad");
        var key = new SessionKey("bench", "pad");
        var random = new SeededGenerator(50);
        for (var kill = 0; kill < Kills; kill++)
        {
            var shown = KillAfter(study, bench.Port, TimeSpan.FromMilliseconds(20 + random.NextInt32(300)));
            var there = Study.Open(study).SessionKeys.Contains(key) ? Study.Open(study).Read(key).Trials.Count : 0;
            Assert.True(there >= shown, $"kill {kill}: {shown} trials were shown as captured, {there} are there");
            var check = await ProgramRun.Tarry("check", study);
            Assert.True(check.ExitCode == Output.ExitCode.Done, check.Error + check.Out);
        }

        var soFar = Study.Open(study).Read(key).Trials.Count;
        await ProgramRun.Done("run", study, "--condition", "pad", "--sitting", "bench", "--port", bench.Port, "--trials", $"{soFar + 100}");
        var session = Study.Open(study).Read(key);

        // The rig may have pressed a few times more before it was told to stop; these are kept, too.
        Assert.InRange(session.Trials.Count, soFar + 100, soFar + 130);
        Assert.Equal(Enumerable.Range(1, session.Trials.Count).Select(number => (long)number), session.Trials.Select(trial => trial.Sequence));
        Assert.All(FirmwareRunTests.Errors(session, bench.Truth()), error => Assert.InRange(error, -1, 1));
    }

    /// <summary>Starts a run, kills it some time after it first shows a trial, and returns how many it had shown.</summary>
    private static long KillAfter(string study, string port, TimeSpan after)
    {
        using var process = Process.Start(new ProcessStartInfo(
            "dotnet",
            [Path.Combine(AppContext.BaseDirectory, "tarry.dll"), "run", study, "--condition", "pad", "--sitting", "bench", "--port", port, "--trials", "1000000", "--json"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var error = process.StandardError.ReadToEndAsync();
        var shown = 0L;
        var running = false;
        while (process.StandardOutput.ReadLine() is { } line)
        {
            // The kill may fall into the middle of a line, the last one then.
            if (!line.EndsWith('}'))
            {
                break;
            }

            var progress = JsonDocument.Parse(line).RootElement;
            shown = Math.Max(shown, progress.GetProperty("captured_on_disk").GetInt64());
            if (!running && progress.GetProperty("phase").GetString() == "running")
            {
                running = true;
                _ = Task.Delay(after).ContinueWith(_ => process.Kill(), TaskScheduler.Default);
            }
        }

        process.WaitForExit();
        Assert.True(running, "the run never began: " + error.Result);
        return shown;
    }
}
