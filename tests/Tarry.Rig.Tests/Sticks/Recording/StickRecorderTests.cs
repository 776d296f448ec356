using Tarry.Rig.SimulatedBench;
using Tarry.Rig.SimulatedBench.Sticks;
using Tarry.Rig.Sticks;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.Tests.Sticks.Recording;

public sealed class StickRecorderTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("tarry-").FullName;

    [Fact]
    public void Run_OfRest_KeepsTheReadingsOfItsStepOnly()
    {
        Assert.True(Run(StickProcedure.Rest, new SimulatedStick { OffsetX = 0.1 }));
        var session = Read(StickProcedure.Rest);

        // 60 s at a reading a millisecond, from the step's first instant on; its end is no reading's.
        Assert.Equal(60_000, session.Samples.Count);
        Assert.Equal((0L, 16_000L), (session.Samples.Ticks[0], session.Samples.Ticks[1]));
        // 1.1 / 2 of 1,023 counts.
        Assert.Equal(563, session.Samples.X[100]);
        Assert.Equal(("rig", StickStimulus.None, true), (session.Setup.Source, session.Setup.Stimulus, session.Record.CountsReconciled));
        Assert.Empty(session.Record.Events);
        Assert.Equal(("simulated", 16_000_000L, 1), (session.Record.Board, session.Record.Segments[0].TickHz, session.Record.Segments[0].BootId));
    }

    [Fact]
    public void Run_OfSubstitution_ReadsBackTheLevelsThatTheRigSet()
    {
        Assert.True(Run(StickProcedure.Substitution, new SimulatedStick()));
        var session = Read(StickProcedure.Substitution);

        var known = Enumerable.Range(0, session.Samples.Count).Where(index => !double.IsNaN(session.Samples.Stimulus[index])).ToList();
        // Half a count, and half of the 65,535 parts.
        Assert.All(known, index => Assert.Equal(session.Samples.Stimulus[index] * 1_023, session.Samples.X[index], 0.51));
        // A quarter and three quarters are among the 33 of the staircase.
        Assert.Equal(33, known.Select(index => session.Samples.Stimulus[index]).Distinct().Count());
        // At most a reading at each of 85 changes has none.
        Assert.InRange(session.Samples.Count - known.Count, 0, 85);
        Assert.Empty(StickAcceptance.Lacks(session));
    }

    [Fact]
    public void Run_OfAngleStops_KnowsTheAngleWhileHeldAndNotBetween()
    {
        Assert.True(Run(StickProcedure.AngleStops, new SimulatedStick()));
        var session = Read(StickProcedure.AngleStops);

        for (var index = 0; index < session.Samples.Count; index++)
        {
            var step = (int)(session.Samples.Ticks[index] / 48_000_000);
            Assert.Equal(step % 2 == 0, double.IsNaN(session.Samples.Stimulus[index]));
        }

        Assert.Equal([0, 45, 90, 135, 180, 225, 270, 315], session.Samples.Stimulus.ToArray().Where(angle => !double.IsNaN(angle)).Distinct());
    }

    [Fact]
    public void Run_ThatIsStopped_LosesNothingThatCame()
    {
        using var stop = new CancellationTokenSource();
        long seen = 0;
        Assert.False(Run(StickProcedure.RimSweep, new SimulatedStick(), new Told(progress =>
        {
            seen = progress.Readings;
            if (progress.Readings > 20_000)
            {
                stop.Cancel();
            }
        }), stop.Token));
        var session = Read(StickProcedure.RimSweep);

        // The first 3 s are a way to the gate and not kept.
        Assert.InRange(session.Samples.Count, seen - 3_000 - 6, seen - 3_000 + 200);
        Assert.True(session.Record.CountsReconciled);
    }

    [Fact]
    public void Run_OnANoisyLine_CountsWhatIsMissing()
    {
        Assert.True(Run(StickProcedure.SlowRamp, new SimulatedStick(), options: new SimulatedRigOptions { NoiseToHost = 2e-5 }));
        var session = Read(StickProcedure.SlowRamp);

        // 46 s of 167 frames a second with 76 bytes each: some 580,000 bytes, of which 12 are hit; a frame in which a line feed is hit takes its neighbour along.
        Assert.Contains(session.Record.Events, text => text.Contains("0 found no room in the rig", StringComparison.Ordinal));
        Assert.InRange(42_000 - session.Samples.Count, 6, 240);
        Assert.True(session.Record.CountsReconciled);
        Assert.Empty(session.Record.Refused);
    }

    [Fact]
    public void Read_OfARecordingThatWasCutOff_KeepsItsWholeLines()
    {
        Assert.True(Run(StickProcedure.Rest, new SimulatedStick()));
        var lines = File.ReadAllLines(FileOf(StickProcedure.Rest));
        File.WriteAllText(FileOf(StickProcedure.Rest), string.Join('\n', lines[..3_000]) + "\nr 5 nonsense\nr 179");
        var session = Read(StickProcedure.Rest);

        Assert.Equal(["line 3001", "line 3002"], session.Record.Refused.Select(item => item.Place));
        Assert.Contains(session.Record.Events, text => text.Contains("did not say that the stream was over", StringComparison.Ordinal));
        Assert.Null(session.Record.CountsReconciled);
        // Header and two step lines aside, 2,997 frames of six readings; the first 6 s are not kept.
        Assert.Equal((2_997 * 6) - 6_000, session.Samples.Count);
    }

    [Fact]
    public void Read_OfAnotherFile_IsRefused()
    {
        File.WriteAllText(FileOf(StickProcedure.Rest), "time_us,x,y\n");
        Assert.Throws<RigException>(() => Read(StickProcedure.Rest));
        Assert.True(Run(StickProcedure.SlowRamp, new SimulatedStick()));
        File.Copy(FileOf(StickProcedure.SlowRamp), FileOf(StickProcedure.RimSweep));
        Assert.Contains("no recording of this procedure", Assert.Throws<RigException>(() => Read(StickProcedure.RimSweep)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_WhoseRigRestarts_KeepsWhatCameBefore()
    {
        var bench = Bench(StickProcedure.Rest, new SimulatedStick(), new SimulatedRigOptions());
        var told = new Told(progress =>
        {
            if (progress.Readings is > 10_000 and < 10_010)
            {
                bench.RestartRig();
            }
        });
        Assert.False(new StickRecorder(bench, new StickRecordingRequest(StickProcedure.Rest), told).Run(FileOf(StickProcedure.Rest), TestContext.Current.CancellationToken));
        var session = Read(StickProcedure.Rest);

        Assert.InRange(session.Samples.Count, 3_990, 4_100);
        Assert.Contains(session.Record.Events, text => text.Contains("the rig restarted", StringComparison.Ordinal));
    }

    [Fact]
    public void Run_WithTimeToTakeHold_CountsDownFirstAndRecordsNothingOfIt()
    {
        List<StickProgress> told = [];
        Assert.True(Record(new StickRecordingRequest(StickProcedure.Rest) { ReadySeconds = 2 }, new Told(told.Add)));
        var before = told.TakeWhile(progress => progress.Number == 0).ToList();

        Assert.Equal(2, before[0].SecondsLeft);
        Assert.True(before.Count >= 15, $"{before.Count} words in two seconds");
        Assert.All(before, progress => Assert.Equal(0, progress.Readings));
        Assert.Equal(60_000, Read(StickProcedure.Rest).Samples.Count);
    }

    [Fact]
    public void Run_ThatIsStoppedBeforeItsFirstStep_LeavesNoFile()
    {
        using var stop = new CancellationTokenSource();
        Assert.False(Record(new StickRecordingRequest(StickProcedure.Rest) { ReadySeconds = 2 }, new Told(progress => stop.Cancel()), stop.Token));
        Assert.False(File.Exists(FileOf(StickProcedure.Rest)));
    }

    [Fact]
    public void Run_InHalfTheTime_DoesAllStepsInIt()
    {
        Assert.True(Record(new StickRecordingRequest(StickProcedure.RimSweep) { Seconds = 33 }));
        var session = Read(StickProcedure.RimSweep);

        // Two times fifteen seconds of turns, a reading a millisecond, and the hand keeps pace: five turns are as many positions a degree.
        Assert.Equal(30_000, session.Samples.Count);
        Assert.Empty(StickAcceptance.Lacks(session));
    }

    [Fact]
    public void Progress_OfASlowRamp_FollowsTheStickFromEndToEnd()
    {
        List<StickProgress> told = [];
        Assert.True(Record(new StickRecordingRequest(StickProcedure.SlowRamp), new Told(told.Add)));

        // The stick goes from -1 to 1 in the twenty seconds from the fourth on; half of it is its middle, and it reads as it stands.
        Assert.Equal(-1, told.First(progress => progress.Seconds >= 2).X, 0.01);
        Assert.Equal(0, told.First(progress => progress.Seconds >= 14).X, 0.01);
        Assert.Equal(1, told.First(progress => progress.Seconds >= 25).X, 0.01);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private bool Run(StickProcedure procedure, SimulatedStick stick, Told? told = null, CancellationToken? cancellation = null, SimulatedRigOptions? options = null) =>
        new StickRecorder(Bench(procedure, stick, options ?? new SimulatedRigOptions()), new StickRecordingRequest(procedure), told)
            .Run(FileOf(procedure), cancellation ?? TestContext.Current.CancellationToken);

    private bool Record(StickRecordingRequest request, Told? told = null, CancellationToken? cancellation = null)
    {
        var pace = StickGuide.Of(request.Procedure).Seconds / request.Guide.Seconds;
        var bench = new SimulatedRigPortSource(new SimulatedDevice(), new SimulatedRigOptions { StickHand = new SimulatedStickHand(new SimulatedStick(), request.Procedure) { Pace = pace } });
        return new StickRecorder(bench, request, told).Run(FileOf(request.Procedure), cancellation ?? TestContext.Current.CancellationToken);
    }

    private static SimulatedRigPortSource Bench(StickProcedure procedure, SimulatedStick stick, SimulatedRigOptions options) =>
        new(new SimulatedDevice(), options with { StickHand = new SimulatedStickHand(stick, procedure) });

    private StickSession Read(StickProcedure procedure) => RecordedStick.Read(FileOf(procedure), new SessionKey("monday", "quill-stick", procedure)).Session;

    private string FileOf(StickProcedure procedure) => Path.Combine(folder, $"{StickProcedures.Name(procedure)}.txt");

    private sealed class Told(Action<StickProgress> told) : IProgress<StickProgress>
    {
        public void Report(StickProgress value) => told(value);
    }
}
