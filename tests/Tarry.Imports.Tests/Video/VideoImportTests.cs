using System.Globalization;
using System.Text;
using Tarry.Imports.Recordings;
using Tarry.Imports.Video;
using Tarry.Metrology;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Imports.Tests.Video;

public sealed class VideoImportTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void Latencies_OfMadeUpFrames_HoldTheTruthInTheirIntervals()
    {
        var generator = new SeededGenerator(5);
        var (presses, latencies) = (new List<double>(), new List<double>());
        for (var index = 0; index < 200; index++)
        {
            presses.Add(0.1 + (0.25 * index) + (0.05 * generator.NextDouble()));
            latencies.Add(0.004 + (0.06 * generator.NextDouble()));
        }

        var plan = Read(Frames(240, 51, presses, latencies, 1.0 / 240, generator));
        var trials = plan.Sessions.Single().Trials;
        Assert.Equal(200, trials.Count);
        for (var index = 0; index < trials.Count; index++)
        {
            var trial = trials[index];
            Assert.Equal(Outcome.Response, trial.Outcome);
            Assert.InRange(latencies[index] * 1e9, trial.LatencyTicks!.Value - 1, trial.LatencyHighTicks!.Value + 1);
            Assert.InRange(trial.LatencyHighTicks.Value - trial.LatencyTicks.Value, 0, (2e9 / 240) + 2);
        }
    }

    [Fact]
    public void Frames_AThirdAndAFifth_GiveTheIntervalBetweenOneAndThreeFrames()
    {
        // Press seen first in frame 3, response in frame 5, 100 frames a second: 10 to 30 ms.
        var trial = Read("pts_time,press,response\n0.00,16,16\n0.01,16,16\n0.02,16,16\n0.03,200,16\n0.04,200,16\n0.05,200,190\n0.06,16,190\n0.07,16,16\n", 100).Sessions.Single().Trials.Single();
        Assert.Equal((10_000_000L, 30_000_000L), (trial.LatencyTicks!.Value, trial.LatencyHighTicks!.Value));
        Assert.Equal(30_000_000, trial.PressTicks);
    }

    [Fact]
    public void Frame_ThatIsMissing_WidensTheInterval()
    {
        var plan = Read("pts_time,press,response\n0.00,16,16\n0.01,16,16\n0.03,200,16\n0.04,200,16\n0.05,200,190\n0.06,16,190\n0.07,16,16\n", 100);
        var trial = plan.Sessions.Single().Trials.Single();
        Assert.Equal((10_000_000L, 40_000_000L), (trial.LatencyTicks!.Value, trial.LatencyHighTicks!.Value));
        Assert.Contains(plan.Sessions.Single().Record.Events, what => what.StartsWith("1 frames are missing", StringComparison.Ordinal));
    }

    [Fact]
    public void Stamps_OfSlowMotion_AreNotedAndTheStatedRateIsUsed()
    {
        var plan = Read("pts_time,press,response\n0.0,16,16\n0.1,16,16\n0.2,200,16\n0.3,200,16\n0.4,200,190\n0.5,16,190\n0.6,16,16\n", 1_000);
        Assert.Equal((1_000_000L, 3_000_000L), (plan.Sessions.Single().Trials.Single().LatencyTicks!.Value, plan.Sessions.Single().Trials.Single().LatencyHighTicks!.Value));
        Assert.Contains(plan.Notes, note => note.Contains("10 frames a second", StringComparison.Ordinal));
        Assert.Contains(plan.Notes, note => note.Contains("rolling shutter", StringComparison.Ordinal));
    }

    [Fact]
    public void Row_ThatCannotBeRead_IsRefusedWithItsLineAndTheRestIsKept()
    {
        var plan = Read("pts_time,press,response\n0.00,16,16\n0.01,16\n0.02,dark,16\n0.03,16,16\n0.03,16,16\n0.04,200,16\n0.05,200,190\n0.06,16,190\n0.07,16,16\n", 100);
        Assert.Equal((4, 1, 3, 3), (plan.Record.RowsRead, plan.Record.RowsKept, plan.Record.RefusedTotal, plan.Record.RefusedUnassigned));
        Assert.Equal(["x.csv line 3", "x.csv line 4", "x.csv line 6"], plan.Record.Refused.Select(item => item.Place));
    }

    [Fact]
    public void Numbers_WithADecimalComma_AreReadAsTheOptionSays()
    {
        const string text = "pts_time;press;response\n0,00;16,5;16\n0,01;16;16\n0,02;16;16\n0,03;200,25;16\n0,04;200;16\n0,05;200;190\n0,06;16;190\n0,07;16;16\n";
        var trial = Read(text, 100, decimalComma: true).Sessions.Single().Trials.Single();
        Assert.Equal((10_000_000L, 30_000_000L), (trial.LatencyTicks!.Value, trial.LatencyHighTicks!.Value));

        var failure = Assert.Throws<ImportException>(() => Read(text, 100));
        Assert.Contains("x.csv line 2", failure.Message, StringComparison.Ordinal);
        Assert.Contains("--decimal-comma", failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Brightness_ThatOneFrameHasDamaged_DoesNotHideTheOtherPresses()
    {
        // Ten presses, lit for 5 of 20 frames; in the first bright frame of one of them two numbers, 10 and 200, have run together.
        var text = new StringBuilder("pts_time,press,response\n");
        for (var frame = 0; frame < 200; frame++)
        {
            var press = frame == 105 ? "10200" : frame % 20 is >= 5 and < 10 ? "200" : "10";
            text.Append(CultureInfo.InvariantCulture, $"{frame / 100.0:0.00},{press},{(frame % 20 is >= 8 and < 13 ? 180 : 12)}\n");
        }

        var trials = Read(text.ToString(), 100).Sessions.Single().Trials;
        Assert.Equal(10, trials.Count(trial => trial is { Outcome: Outcome.Response, LatencyTicks: 20_000_000, LatencyHighTicks: 40_000_000 }));
    }

    [Fact]
    public void Brightness_ThatIsHighForOneFrameOnly_IsStillAPress()
    {
        var trial = Read("pts_time,press,response\n0.00,16,16\n0.01,16,16\n0.02,200,16\n0.03,16,16\n0.04,16,190\n0.05,16,16\n0.06,16,16\n", 100).Sessions.Single().Trials.Single();
        Assert.Equal((10_000_000L, 30_000_000L), (trial.LatencyTicks!.Value, trial.LatencyHighTicks!.Value));
    }

    [Theory]
    [InlineData("pts_time,press,response\n", "holds no frame")]
    [InlineData("pts_time,press,response\n0,1,1\n0.1,1,1\n", "of one brightness")]
    [InlineData("time,press,response\n0,1,1\n", "--time-column")]
    [InlineData("0.1,16,16\n0.2,16,16\n", "first line holds the names")]
    public void Table_ThatHoldsNoPress_IsRefusedWithARemedy(string text, string message) =>
        Assert.Contains(message, Assert.Throws<ImportException>(() => Read(text)).Message, StringComparison.Ordinal);

    public void Dispose() => folder.Dispose();

    private ImportPlan Read(string text, double fps = 240, bool decimalComma = false) => VideoImport.Read(
        folder.Write("x.csv", text), new VideoOptions { CaptureFps = fps, DecimalComma = decimalComma, Window = new PairingWindow(0, 100) }, new RecordingTarget(new SessionKey("monday", "quill"), []));

    /// <summary>What a camera with a global shutter and short exposure sees.</summary>
    private static string Frames(double fps, double seconds, List<double> presses, List<double> latencies, double stampStep, SeededGenerator generator)
    {
        var text = new StringBuilder("pts_time,press,response\n");
        for (var frame = 0; frame < seconds * fps; frame++)
        {
            var time = frame / fps;
            var press = presses.Any(press => time >= press && time < press + 0.1);
            var lit = presses.Zip(latencies).Any(trial => time >= trial.First + trial.Second && time < trial.First + trial.Second + 0.1);
            text.Append(CultureInfo.InvariantCulture, $"{frame * stampStep:0.000000},{(press ? 200 : 20) + (2 * generator.NextNormal()):0.00},{(lit ? 180 : 30) + (2 * generator.NextNormal()):0.00}\n");
        }

        return text.ToString();
    }
}
