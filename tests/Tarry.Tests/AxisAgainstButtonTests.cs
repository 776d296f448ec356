using System.Globalization;
using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Imports.DelimitedText;
using Tarry.Metrology;
using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Tests;

/// <summary>
/// A simulated pad with a button and an axis behind the same chain. The axis is moved along a ramp of 10 ms over the whole
/// span; the pad takes it for pressed at 70 % of it, seen through a mean over 2 ms. So it answers 7 + 1 ms after the press; by a stated
/// threshold of t of the span the axis is later than the button by 8 - 10 t ms, whatever the chain behind both.
/// </summary>
public class AxisAgainstButtonTests
{
    private const int RampUs = 10_000;
    private static readonly string[] Sittings = ["monday", "tuesday", "wednesday", "thursday"];

    [Theory]
    [InlineData(0.5, 3.0, Verdict.Slower)]
    [InlineData(0.8, 0.0, Verdict.NoDifferenceThatMatters)]
    [InlineData(1.0, -2.0, Verdict.Faster)]
    public void Difference_OfAnAxisThatCrossesLate_FollowsTheStatedThreshold(double threshold, double truthMs, Verdict verdict)
    {
        using var folder = new TemporaryFolder();
        var study = Capture(folder["study"], threshold);
        var pair = Assert.Single(StudyAnalysis.Run(study, seed: 1, version: "test", TestContext.Current.CancellationToken).Comparisons);
        var sign = pair.A == "axis" ? 1 : -1;
        var difference = Assert.IsType<Estimate<LatencyDifference>>(pair.Difference).Value.Milliseconds;
        Assert.Equal(truthMs, sign * difference, 0.1);
        Assert.Equal(verdict, sign > 0 ? pair.Verdict : Reversed(pair.Verdict));
    }

    [Fact]
    public void Mean_OfAPadThatAnswersBeforeTheStatedThreshold_IsBelowZero()
    {
        // 8 ms to the pad's own crossing, 0.2 ms fixed, 0.5 ms to the next report on average, less 10 ms to the stated one.
        using var folder = new TemporaryFolder();
        var study = Capture(folder["study"], 1, fixedDelayMs: 0.2);
        var axis = StudyAnalysis.Run(study, seed: 1, version: "test", TestContext.Current.CancellationToken).Conditions.Single(condition => condition.Id == "axis");
        Assert.Equal(-1.3 + 0.15, Assert.IsType<Estimate<Latency>>(axis.Mean).Value.Milliseconds, 0.1);
    }

    [Fact]
    public void LongForm_OfAnAxis_CountsFromTheCrossing()
    {
        using var folder = new TemporaryFolder();
        var study = Capture(folder["study"], 0.5);
        var session = study.Read(new SessionKey("monday", "axis"));
        Assert.Equal(new Actuation("axis", new AxisActuation("dac", 0, 65_535, Level(0.5), RampUs)), session.Record.Run!.Actuation);
        using var text = new StringWriter();
        LongFormWriter.Write(text, study.File, [session], TestContext.Current.CancellationToken);
        var first = text.ToString().Split('\n')[1].Split(',');
        var trial = session.Trials[0];
        var hertz = session.Record.Segments[0].TickHz * (1 + ((session.Record.Segments[0].ClockFit?.RateErrorPpm ?? 0) / 1e6));
        Assert.Equal(((trial.PressTicks!.Value / hertz) + 0.005) * 1e6, double.Parse(first[3], CultureInfo.InvariantCulture), 0.2);
        Assert.Equal(((trial.LatencyTicks!.Value / hertz) - 0.005) * 1e6, double.Parse(first[4], CultureInfo.InvariantCulture), 0.2);
    }

    private static Study Capture(string folder, double threshold, double fixedDelayMs = 2)
    {
        var study = Study.Create(folder, "Button against axis", "button", 0.5);
        using var held = study.AcquireLock("tests");
        var pad = new SimulatedDevice { FixedDelayMs = fixedDelayMs, ReportIntervalMs = 1, SensorNoiseSdMs = 0.05, AxisThreshold = Level(0.7), AxisFilterMs = 2 };
        foreach (var condition in new[] { "button", "axis" })
        {
            study.AddCondition(held, new ConditionEntry { Id = condition, Factors = new Dictionary<string, string> { ["control"] = condition } });
            for (var sitting = 0; sitting < Sittings.Length; sitting++)
            {
                var own = (uint)sitting + (condition == "axis" ? 101u : 1u);
                var axis = condition == "axis" ? new Actuation("axis", new AxisActuation("dac", 0, 65_535, Level(threshold), RampUs)) : null;
                var request = new RunRequest
                {
                    Key = new SessionKey(Sittings[sitting], condition),
                    Settings = RunRequest.DefaultSettings with { Actuation = axis, Seed = own },
                    Trials = 300,
                };
                var bench = new SimulatedRigPortSource(
                    pad with { SittingOffsetMs = 0.1 * sitting, ReportPhaseMs = 0.3 * sitting, ReportClockErrorPpm = 40 },
                    new SimulatedRigOptions { Seed = own, RateErrorPpm = 20 });
                Assert.True(new CaptureRun(study, held, request, bench).Run(TestContext.Current.CancellationToken).Completed);
            }
        }

        return study;
    }

    private static int Level(double part) => (int)Math.Round(part * 65_535);

    private static Verdict Reversed(Verdict verdict) => verdict switch
    {
        Verdict.Faster => Verdict.Slower,
        Verdict.Slower => Verdict.Faster,
        _ => verdict,
    };
}
