using System.Globalization;
using System.Text.RegularExpressions;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Tests.Emulator;

/// <summary>The real firmware where a press moves something else than a contact.</summary>
public class ActuationTests
{
    [Theory]
    [InlineData("328p-16", 32, 30)]
    [InlineData("32u4-16", 32, 30)]
    [InlineData("328p-8", 64, 60)]
    public async Task Run_OfAnAxisByConverter_CrossesTheStatedThresholdWhenItSays(string board, double halfStairUs, double wordUs)
    {
        // From 8,192 to 57,344 in 10 ms the axis passes 45,056 after 7.5 ms; the device answers 3 ms after that. The page of the
        // protocol allows half a stair before and after, and what a word takes after.
        using var folder = new TemporaryFolder();
        using var bench = new EmulatedBench(folder, board, "--input", "converter", "--axis-threshold", "45056", "--fixed-us", "3000");
        var session = await FirmwareRunTests.Run(
            folder, bench, 200, "--actuate", "axis", "--axis-drive", "dac", "--axis-low", "8192", "--axis-high", "57344",
            "--axis-threshold", "45056", "--axis-ramp-ms", "10");
        Assert.All(FirmwareRunTests.Errors(session, bench.Truth()), error => Assert.InRange(error, -0.5, 0.5));
        var hertz = session.Record.Segments[0].TickHz;
        var crossing = session.Record.Run!.CrossingTicks(hertz);
        Assert.Equal(0.0075 * hertz, crossing);
        Assert.All(session.Trials, trial =>
        {
            Assert.Equal(Outcome.Response, trial.Outcome);
            Assert.InRange((trial.LatencyTicks!.Value - crossing) * 1e6 / hertz, 3000 - halfStairUs, 3000 + halfStairUs + wordUs);
        });
        Assert.Contains("bad 0", bench.Summary());
    }

    [Fact]
    public async Task Run_InReferenceMode_PressesTheGamepadInTheNextReport()
    {
        // The computer fetches a report every millisecond and answers 2 ms after one with button 1 down. So a press is answered
        // 2 to 3 ms after it, evenly spread, and the report is there for the computer within 20 us of the press: the mean is 2.5 ms with a standard error of 1 ms / sqrt(12 x 500) = 0.013 ms.
        using var folder = new TemporaryFolder();
        using var bench = new EmulatedBench(folder, "32u4-16", "--input", "usb", "--fixed-us", "2000");
        var session = await FirmwareRunTests.Run(folder, bench, 500, "--actuate", "reference");
        Assert.All(FirmwareRunTests.Errors(session, bench.Truth()), error => Assert.InRange(error, -0.5, 0.5));
        var latencies = session.Trials.Select(trial => trial.LatencyTicks!.Value * 1e3 / session.Record.Segments[0].TickHz).ToList();
        Assert.All(latencies, latency => Assert.InRange(latency, 2, 3.02));
        Assert.InRange(latencies.Average(), 2.5 - 0.06, 2.5 + 0.06);
        Assert.Equal(new Actuation(Actuation.Reference), session.Record.Run!.Actuation);

        var summary = bench.Summary();
        Assert.Contains("usb device: 12 01 00 02", summary);
        Assert.Contains("usb configuration chosen: 01", summary);
        Assert.Contains("usb report descriptor: 05 01 09 05 a1 01 05 09 19 01", summary);
        Assert.Equal(1000, int.Parse(Regex.Match(summary, @"usb reports: (\d+)").Groups[1].Value, CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task Run_InReferenceModeOfABoardThatCannot_SaysSo()
    {
        using var folder = new TemporaryFolder();
        using var bench = new EmulatedBench(folder, "328p-16");
        await ProgramRun.Done("new", folder["study"], "--reference", "pad");
        await ProgramRun.Done("condition", folder["study"], "pad");
        var run = await ProgramRun.Tarry("run", folder["study"], "--condition", "pad", "--sitting", "bench", "--port", bench.Port, "--trials", "10", "--actuate", "reference");
        Assert.NotEqual(0, run.ExitCode);
        Assert.Contains("refm", run.Error);
    }
}
