using Tarry.Findings;
using Tarry.Findings.Budgets;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Tests.Emulator;

namespace Tarry.Tests.Budgets;

/// <summary>The real firmware on a clock that runs 3,000 ppm fast, calibrated by its own loop, with 20 us from the light to the threshold.</summary>
public class EmulatedRigBudgetTests
{
    private const double ClockPpm = 3000;
    private const double ThresholdDelayUs = 20;
    private const double LatencyUs = 20_000;

    [Fact]
    public async Task Absolute_OfTheFirmware_HoldsTheTruthWithinTheStatedUncertainty()
    {
        using var folder = new TemporaryFolder();
        var study = folder["study"];
        await ProgramRun.Done("new", study, "--reference", "pad");
        await ProgramRun.Done("condition", study, "pad");

        using (var loopFolder = new TemporaryFolder())
        using (var loop = Bench(loopFolder, ThresholdDelayUs))
        {
            Assert.Contains("Stored as calibration 0001", await ProgramRun.Done("rig", "calibrate", study, "--port", loop.Port, "--response", "light", "--trials", "2000"), StringComparison.Ordinal);
        }

        // So long that the pings with the shortest round trips span ten seconds even where they come close together, on a machine that is busy for a while.
        using var bench = Bench(folder, LatencyUs + ThresholdDelayUs);
        await ProgramRun.Done("run", study, "--condition", "pad", "--sitting", "bench", "--port", bench.Port, "--trials", "500", "--response", "light");

        var opened = Study.Open(study);
        Assert.Equal("0001", opened.Read(new SessionKey("bench", "pad")).Record.Calibration);
        var own = opened.Calibrations[0].Calibration;
        Assert.InRange(own.OwnDelayUs, ThresholdDelayUs - 1, ThresholdDelayUs + 1);

        // The emulator injects in cycles of the rig's clock; in true time they are shorter.
        var truthMs = LatencyUs / (1 + (ClockPpm / 1e6)) / 1000;
        var budget = StudyAnalysis.Run(opened, 1, "test", TestContext.Current.CancellationToken).Conditions[0].Budget!;
        var mean = budget.Mean!;
        Assert.True(budget.Calibrated);
        Assert.True(
            mean.Interval.Contains(Metrology.Latency.FromMilliseconds(truthMs)),
            $"{mean.Value} +- {mean.Stated.Uncertainty.Expanded} ms, true {truthMs} ms");

        // The emulator has no actuator, for which the budget corrects by the middle of its limits; the rest is known far better.
        var actuator = budget.Inputs.Single(input => input.Source == UncertaintySource.ActuatorDelay).Estimate / 1000;
        var rest = Math.Sqrt(mean.Stated.Contributions
            .Where(part => part.Source != UncertaintySource.ActuatorDelay)
            .Sum(part => part.Milliseconds * part.Milliseconds));
        Assert.InRange(Math.Abs(mean.Value.Milliseconds + actuator - truthMs), 0, 3 * rest);
        Assert.InRange(rest, 0, 0.002);
    }

    private static EmulatedBench Bench(TemporaryFolder folder, double fixedUs) =>
        new(folder, "328p-16", "--realtime", "--clock-ppm", $"{ClockPpm}", "--response", "light", "--fixed-us", $"{fixedUs}");
}
