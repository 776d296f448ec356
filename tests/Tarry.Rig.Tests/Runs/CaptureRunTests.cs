using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Rig.Tests.Runs;

public sealed class CaptureRunTests : IDisposable
{
    private static readonly SimulatedDevice Pad = new()
    {
        FixedDelayMs = 1.2,
        ReportIntervalMs = 4,
        FrameIntervalMs = 4.1,
        SensorNoiseSdMs = 0.05,
        MissProbability = 0.01,
        BounceProbability = 0.02,
        ActiveAtPressProbability = 0.005,
    };

    private readonly TemporaryStudy temporary = new();

    public void Dispose() => temporary.Dispose();

    [Fact]
    public void Run_TwoThousandTrials_RecordsExactlyWhatWasInjected()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { Seed = 3 });
        var watch = System.Diagnostics.Stopwatch.StartNew();
        var result = temporary.Run(bench, 2000);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(5), $"took {watch.Elapsed}");
        TestContext.Current.SendDiagnosticMessage($"2,000 trials in {watch.ElapsedMilliseconds} ms");
        Assert.True(result.Completed);
        var session = temporary.Study.Read(TemporaryStudy.Key);
        Assert.True(session.Sealed);
        AssertAsInjected(session.Trials, bench.Injected);
        Assert.Equal(2000, session.Trials.Count);
        Assert.True(session.Record.CountsReconciled);
        Assert.Empty(session.Record.Refused);
        Assert.Empty(session.Record.Events);
        Assert.Equal(2000, result.Final.CapturedOnDisk);
        Assert.Equal(2000, result.Final.Responses + result.Final.Missed + result.Final.Early);
        Assert.True(result.Final.Missed > 0 && result.Final.Early > 0);
        Assert.DoesNotContain(session.Trials, trial => trial.Flags.HasFlag(TrialFlags.WaitedForHost));
    }

    [Theory]
    [InlineData(3000)]
    [InlineData(-3000)]
    [InlineData(0)]
    public void Run_TimerThatRunsFastOrSlow_IsFitted(double injectedPpm)
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { RateErrorPpm = injectedPpm });
        var session = temporary.Run(bench, 640).Session!;
        var fit = Assert.Single(session.Record.Segments).ClockFit!;
        Assert.InRange(fit.SpanSeconds, 50, 70);
        Assert.InRange(fit.RateErrorPpm, injectedPpm - 2, injectedPpm + 2);
    }

    [Fact]
    public void Run_Restart_BeginsASegmentAndGoesOn()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { RestartsAtTrials = [150, 220] });
        var session = temporary.Run(bench, 300).Session!;
        Assert.Equal([1, 150, 220], session.Record.Segments.Select(segment => segment.FirstSequence));
        Assert.Equal([1, 2, 3], session.Record.Segments.Select(segment => segment.BootId));
        Assert.Equal(2, session.Record.Events.Count(text => text.Contains("restarted", StringComparison.Ordinal)));
        Assert.Equal(300, session.Trials.Count);
        AssertAsInjected(session.Trials, bench.Injected);
        Assert.All(session.Trials, trial => Assert.Equal(trial.Sequence < 150 ? 0 : trial.Sequence < 220 ? 1 : 2, trial.Segment));

        // A run that goes on does not press at the intervals of its beginning again.
        Assert.NotEqual(Intervals(session, 0, 20), Intervals(session, 1, 20));
    }

    [Fact]
    public void Run_CablePulledAndPutBack_LosesNothing()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { UnplugsAfterTrials = [100, 180], UnpluggedSeconds = 20 });
        var phases = new HashSet<RunPhase>();
        var session = temporary.Run(bench, 300, progress: new WhenReported(report => phases.Add(report.Phase))).Session!;
        Assert.Equal(300, session.Trials.Count);
        AssertAsInjected(session.Trials, bench.Injected);
        Assert.Single(session.Record.Segments);
        Assert.True(session.Record.CountsReconciled);
        Assert.Contains(RunPhase.WaitingForRig, phases);
        Assert.Equal(4, session.Record.Events.Count);

        // The rig goes on alone until it holds 24 trials, then waits.
        Assert.Equal(2, session.Trials.Count(trial => trial.Flags.HasFlag(TrialFlags.WaitedForHost)));
    }

    [Fact]
    public void Run_BoardThatResetsWhenItsPortIsOpened_GoesOnInANewSegment()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { UnplugsAfterTrials = [100], RestartsWhenOpened = true });
        var session = temporary.Run(bench, 200).Session!;
        Assert.Equal([2, 3], session.Record.Segments.Select(segment => segment.BootId));
        Assert.Equal(200, session.Trials.Count);
    }

    [Fact]
    public void Run_RigThatDoesNotComeBack_FailsInTimeAndLeavesTheJournal()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { UnplugsAfterTrials = [100], UnpluggedSeconds = 3600 });
        var request = new RunRequest { Key = TemporaryStudy.Key, Trials = 200, ReturnLimit = TimeSpan.FromSeconds(30) };
        Assert.Throws<RigException>(() => temporary.Run(bench, request));
        Assert.InRange(temporary.Study.Read(TemporaryStudy.Key).Trials.Count, 98, 100);
    }

    [Fact]
    public void Run_CancelledWhileTheRigIsGone_LeavesTheJournal()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { UnplugsAfterTrials = [60], UnpluggedSeconds = 100 });
        using var cancellation = new CancellationTokenSource();
        var stopped = temporary.Run(bench, 100, cancellation.Token, new WhenReported(report =>
        {
            if (report.Phase == RunPhase.WaitingForRig)
            {
                cancellation.Cancel();
            }
        }));
        Assert.False(stopped.Completed);
        bench.Pause(TimeSpan.FromSeconds(100), TestContext.Current.CancellationToken);
        var session = temporary.Run(bench, 100).Session!;
        Assert.Equal(100, session.Trials.Count);
        AssertAsInjected(session.Trials, bench.Injected);
    }

    [Fact]
    public void Run_Cancelled_TakesTheTrialInFlightAndIsResumedByTheSameRequest()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions());
        using var cancellation = new CancellationTokenSource();
        var stopped = temporary.Run(bench, 300, cancellation.Token, new WhenReported(report =>
        {
            if (report.Responses > 120)
            {
                cancellation.Cancel();
            }
        }));
        Assert.False(stopped.Completed);
        Assert.Equal(bench.Injected.Count, stopped.Final.CapturedOnDisk);
        Assert.False(temporary.Study.IsSealed(TemporaryStudy.Key));

        var session = temporary.Run(bench, 300).Session!;
        Assert.Equal(300, session.Trials.Count);
        AssertAsInjected(session.Trials, bench.Injected);
        Assert.True(session.Record.CountsReconciled);
    }

    [Fact]
    public void Run_HostKilled_TheNextRunFetchesWhatTheRigHeld()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions());
        var doomed = new DyingPortSource(bench);
        Assert.Throws<InvalidOperationException>(() => temporary.Run(doomed, 300, progress: new WhenReported(report =>
        {
            if (report.CapturedOnDisk > 100)
            {
                doomed.Kill();
            }
        })));
        var before = temporary.Study.Read(TemporaryStudy.Key).Trials.Count;
        bench.Pause(TimeSpan.FromMinutes(20), TestContext.Current.CancellationToken);
        var pressedAlone = bench.Injected.Count - before;
        Assert.InRange(pressedAlone, 1, 24);

        var session = temporary.Run(bench, 300).Session!;
        Assert.Equal(300, session.Trials.Count);
        Assert.Equal(300, bench.Injected.Count);
        AssertAsInjected(session.Trials, bench.Injected);
        Assert.Single(session.Record.Segments);
        Assert.True(session.Record.CountsReconciled);
    }

    [Fact]
    public void Run_ResumedOnARigThatRestartedMeanwhile_GoesOnInANewSegment()
    {
        var gone = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { UnplugsAfterTrials = [50], UnpluggedSeconds = 3600 });
        Assert.Throws<RigException>(() => temporary.Run(gone, new RunRequest { Key = TemporaryStudy.Key, Trials = 100, ReturnLimit = TimeSpan.FromSeconds(1) }));
        var mine = temporary.Study.Read(TemporaryStudy.Key).Trials.Count;

        var back = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { Seed = 2, BootId = 9 });
        var session = temporary.Run(back, 100).Session!;
        Assert.Equal(100, session.Trials.Count);
        Assert.Equal([1, 9], session.Record.Segments.Select(segment => segment.BootId));
        Assert.Equal(mine + 1, session.Record.Segments[1].FirstSequence);
        AssertAsInjected([.. session.Trials.Skip(mine)], back.Injected);
        Assert.Contains(session.Record.Events, text => text.StartsWith("resumed after trial", StringComparison.Ordinal));
    }

    [Fact]
    public void Run_RigLeftInTheRunOfAnotherSession_TakesNoneOfItsTrials()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions());
        var doomed = new DyingPortSource(bench);
        Assert.Throws<InvalidOperationException>(() => temporary.Run(doomed, 300, progress: new WhenReported(report =>
        {
            if (report.CapturedOnDisk > 50)
            {
                doomed.Kill();
            }
        })));
        var other = new RunRequest { Key = new SessionKey("tuesday", "pad"), Trials = 100 };
        var theirs = temporary.Run(bench, other).Session!;
        Assert.Equal(100, theirs.Trials.Count);
        Assert.All(theirs.Trials.Zip(bench.Injected.TakeLast(100)), pair => Assert.Equal(pair.Second.PressTicks, pair.First.PressTicks));
        Assert.Contains("does not know", Assert.Single(theirs.Record.Events), StringComparison.Ordinal);

        // The first session's journal goes on, and does not take the second's trials for its own.
        var mine = temporary.Study.Read(TemporaryStudy.Key).Trials.Count;
        var injectedBefore = bench.Injected.Count;
        var session = temporary.Run(bench, 300).Session!;
        Assert.Equal(300, session.Trials.Count);
        AssertAsInjected([.. session.Trials.Skip(mine)], [.. bench.Injected.Skip(injectedBefore)]);
    }

    [Fact]
    public void Run_HalfWidthTarget_StopsWhenItIsReachedButNotBeforeTwoHundred()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions());
        var result = temporary.Run(bench, new RunRequest { Key = TemporaryStudy.Key, HalfWidthMs = 0.15 });
        Assert.True(result.Completed);
        Assert.True(result.Final.HalfWidthMs <= 0.15);
        Assert.InRange(result.Session!.Trials.Count, 200, 3000);

        var easy = temporary.Run(bench, new RunRequest { Key = new SessionKey("tuesday", "pad"), HalfWidthMs = 100 });
        Assert.InRange(easy.Session!.Trials.Count, 200, 205);
    }

    [Fact]
    public void Run_LineNoiseInBothDirections_StoresNothingWrongly()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { Seed = 5, NoiseToHost = 0.003, NoiseToRig = 0.003 });
        var result = temporary.Run(bench, 1500);
        var session = result.Session!;
        Assert.Equal(1500, session.Trials.Count);
        AssertAsInjected(session.Trials, bench.Injected);
        Assert.True(result.Final.Health.BadFramesAtHost > 100);
        Assert.True(result.Final.Health.TrialsSentAgain > 50);
        Assert.True(result.Final.Health.RepeatedCommands > 0);
        Assert.Equal(result.Final.Health.BadFramesAtHost, session.Record.RefusedTotal);
        Assert.DoesNotContain(session.Trials, trial => trial.Outcome == Outcome.Refused);
    }

    [Fact]
    public void Run_HeavyLineNoise_StoresNothingWrongly()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { Seed = 6, NoiseToHost = 0.02, NoiseToRig = 0.02 });
        var session = temporary.Run(bench, 300).Session!;
        Assert.Equal(300, session.Trials.Count);
        AssertAsInjected(session.Trials, bench.Injected);
    }

    [Theory]
    [InlineData(32, 3200)]
    [InlineData(48, 100)]
    public void Run_CounterThatWraps_IsExtended(byte bits, int trials)
    {
        // Starts one second before its wrap; 32 bits turn over every 268 s, and so twice.
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { CounterBits = bits, StartTicks = (1UL << bits) - 16_000_000 });
        var session = temporary.Run(bench, trials).Session!;
        AssertAsInjected(session.Trials, bench.Injected);
        Assert.True(session.Trials[^1].PressTicks > (bits == 32 ? 2L : 1L) << bits);
        var pressed = session.Trials.Select(trial => trial.PressTicks!.Value).ToList();
        Assert.All(pressed.Zip(pressed.Skip(1)), pair => Assert.InRange(pair.Second - pair.First, 70 * 16_000, 120 * 16_000));
    }

    [Fact]
    public void Run_SameSeeds_GiveTheSameSession()
    {
        var options = new SimulatedRigOptions { Seed = 9, NoiseToHost = 0.002, NoiseToRig = 0.002, RestartsAtTrials = [60] };
        var first = temporary.Run(new SimulatedRigPortSource(Pad, options), 200).Session!;
        using var other = new TemporaryStudy();
        var second = other.Run(new SimulatedRigPortSource(Pad, options), 200).Session!;
        Assert.Equal(first.Trials, second.Trials);
        Assert.Equal(first.Record.Segments, second.Record.Segments);
        Assert.Equal(first.Record.Events, second.Record.Events);
        Assert.Equal(first.Record.Refused, second.Record.Refused);
    }

    [Fact]
    public void Run_SealedSession_IsRefused()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions());
        temporary.Run(bench, 50);
        Assert.Contains("sealed", Assert.Throws<RunSettingsException>(() => temporary.Run(bench, 100)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_OtherSettingsThanTheJournal_IsRefused()
    {
        var bench = new SimulatedRigPortSource(Pad, new SimulatedRigOptions { UnplugsAfterTrials = [20], UnpluggedSeconds = 3600 });
        var request = new RunRequest { Key = TemporaryStudy.Key, Trials = 50, ReturnLimit = TimeSpan.FromSeconds(1) };
        Assert.Throws<RigException>(() => temporary.Run(bench, request));
        Assert.Throws<RunSettingsException>(() => temporary.Run(bench, request with { Settings = request.Settings with { Seed = 2 } }));
    }

    /// <summary>Trials in order against the truth in order: the bench repeats the number of a press that was lost, so they go side by side.</summary>
    private static void AssertAsInjected(IReadOnlyList<Trial> trials, IReadOnlyList<InjectedPress> injected)
    {
        Assert.Equal(injected.Count, trials.Count);
        foreach (var (trial, truth) in trials.Zip(injected))
        {
            Assert.Equal((truth.Sequence, truth.PressTicks), (trial.Sequence, trial.PressTicks));
            Assert.Equal(truth.LatencyTicks, trial.LatencyTicks);
            Assert.Equal(truth.LatencyTicks is null ? Outcome.Missed : truth.LatencyTicks == 0 ? Outcome.Early : Outcome.Response, trial.Outcome);
        }
    }

    private static List<long> Intervals(SessionData session, int segment, int count)
    {
        var pressed = session.Trials.Where(trial => trial.Segment == segment).Select(trial => trial.PressTicks!.Value).Take(count + 1).ToList();
        return [.. pressed.Zip(pressed.Skip(1), (before, after) => after - before)];
    }
}
