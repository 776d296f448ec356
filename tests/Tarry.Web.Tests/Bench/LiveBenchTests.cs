using System.Diagnostics;
using Tarry.Rig;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Link;
using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies;
using Tarry.Studies.OpenRuns;
using Tarry.Web.Bench;
using Tarry.Web.Sticks;

namespace Tarry.Web.Tests.Bench;

public sealed class LiveBenchTests : IDisposable
{
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(20);
    private readonly BenchStudy bench = new();

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task Begin_SimulatedBench_CapturesToTheTargetSealsAndTellsTheStudy()
    {
        using var live = bench.Bench();
        var told = 0;
        bench.Desks.Of(BenchStudy.Name)!.Changed += () => Interlocked.Increment(ref told);
        var run = live.Begin(BenchStudy.Card(300));
        await run.Ended.WaitAsync(Limit, Cancellation);
        Assert.Equal(RunStanding.Sealed, run.Now.Standing);
        Assert.Equal(300, run.Now.Captured);
        Assert.Equal(0, run.Now.BeingWritten);
        Assert.Equal(run.Now.Progress!.Responses, run.Now.Shape!.Count);
        await Until(() => Volatile.Read(ref told) > 0);
        var session = bench.Open().Read(BenchStudy.Key);
        Assert.True(session.Sealed);
        Assert.Equal(300, session.Trials.Count);
        Assert.Null(bench.Open().OpenRunOf(BenchStudy.Key));
        Assert.False(Directory.Exists(Path.Combine(bench.Folder, "open-runs")));
    }

    [Fact]
    public async Task Pause_ThenBeginAgain_GoesOnWithoutAGapAndKeepsTheTarget()
    {
        using var live = bench.Bench();
        var run = live.Begin(BenchStudy.Card(400, speed: 20));
        await Until(() => run.Now.Captured >= 50);
        run.Pause();
        await run.Ended.WaitAsync(Limit, Cancellation);
        Assert.Equal(RunStanding.Paused, run.Now.Standing);
        var captured = run.Now.Captured;
        Assert.InRange(captured, 50, 399);

        // Another program that opens the study finds the target, as after a kill.
        var unfinished = Assert.Single(UnfinishedSession.Of(bench.Open(), SimulatedDefault.Port));
        Assert.Equal((captured, true, 400L), (unfinished.Trials, unfinished.TargetIsKnown, unfinished.Asked!.Trials));

        var again = live.Begin(run.Card);
        await again.Ended.WaitAsync(Limit, Cancellation);
        Assert.Equal(RunStanding.Sealed, again.Now.Standing);
        var trials = bench.Open().Read(BenchStudy.Key).Trials;
        Assert.Equal(Enumerable.Range(1, 400).Select(sequence => (long)sequence), trials.Select(trial => trial.Sequence));

        // What the bench tells after the pause is not what it told at its beginning.
        Assert.NotEqual(
            trials.Take(40).Select(trial => trial.LatencyTicks),
            trials.Skip((int)captured).Take(40).Select(trial => trial.LatencyTicks));
    }

    [Fact]
    public async Task Changed_TwoWindows_SeeTheSameAndNotMoreThanFourTimesASecond()
    {
        using var live = bench.Bench();
        var run = live.Begin(BenchStudy.Card(null, speed: 20));
        var (first, second) = (new List<long>(), new List<long>());
        run.Changed += () => first.Add(run.Now.Captured);
        run.Changed += () => second.Add(run.Now.Captured);
        var watch = Stopwatch.StartNew();
        await Until(() => run.Now.Captured >= 150);
        run.Pause();
        await run.Ended.WaitAsync(Limit, Cancellation);
        Assert.Equal(first, second);
        Assert.Equal(first.Order(), first);

        // The pause and the end are told at once, beside the beats.
        Assert.InRange(first.Count, 2, (int)(watch.Elapsed.TotalSeconds * 4) + 3);
    }

    [Fact]
    public async Task Begin_WhileTheStudysRunIsOn_IsRefused()
    {
        using var live = bench.Bench();
        var run = live.Begin(BenchStudy.Card(null, speed: 1));
        Assert.Contains("still on", Assert.Throws<StudyException>(() => live.Begin(BenchStudy.Card(10))).Message, StringComparison.Ordinal);
        run.Pause();
        await run.Ended.WaitAsync(Limit, Cancellation);
    }

    [Fact]
    public async Task Begin_RigThatFailsInMidRun_KeepsWhatWasCapturedAndGoesOn()
    {
        using var live = bench.Bench(new FailingPorts(afterTrials: 60));
        var run = live.Begin(BenchStudy.Card(200));
        await run.Ended.WaitAsync(Limit, Cancellation);
        Assert.Equal(RunStanding.Failed, run.Now.Standing);
        Assert.IsType<RigException>(run.Now.Problem);
        var kept = bench.Open().Read(BenchStudy.Key);
        Assert.False(kept.Sealed);
        Assert.True(kept.Trials.Count >= run.Now.Captured && run.Now.Captured > 0);
        Assert.Equal(200, bench.Open().OpenRunOf(BenchStudy.Key)!.Trials);

        using var later = bench.Bench();
        var again = later.Begin(run.Card);
        await again.Ended.WaitAsync(Limit, Cancellation);
        Assert.Equal(RunStanding.Sealed, again.Now.Standing);
        Assert.Equal(200, bench.Open().Read(BenchStudy.Key).Trials.Count);
    }

    [Fact]
    public void Begin_PortThatIsNotThere_IsRefusedAndLeavesNothing()
    {
        using var live = bench.Bench();
        Assert.Throws<RigException>(() => live.Begin(BenchStudy.Card(10, port: "/etc/passwd")));
        Assert.Empty(live.Runs);
        Assert.Empty(bench.Open().SessionKeys);
        bench.Open().AcquireLock("tests").Dispose();
    }

    [Fact]
    public async Task Begin_OtherSettingsThanTheJournals_IsRefusedAndKeepsTheTarget()
    {
        using var live = bench.Bench();
        var run = live.Begin(BenchStudy.Card(400, speed: 20));
        await Until(() => run.Now.Captured >= 10);
        run.Pause();
        await run.Ended.WaitAsync(Limit, Cancellation);
        var other = run.Card with { Asked = run.Card.Asked with { Trials = 5000, Run = run.Card.Asked.Run with { HoldUs = 30_000 } } };
        Assert.Throws<RunSettingsException>(() => live.Begin(other));
        Assert.Equal(400, bench.Open().OpenRunOf(BenchStudy.Key)!.Trials);
    }

    [Fact]
    public async Task StopAll_RunUnderWay_EndsItWithItsJournalWhole()
    {
        using var live = bench.Bench();
        var run = live.Begin(BenchStudy.Card(null, speed: 20));
        await Until(() => run.Now.Captured >= 20);
        await Task.Run(live.StopAll, Cancellation).WaitAsync(Limit, Cancellation);
        Assert.Equal(RunStanding.Paused, run.Now.Standing);
        Assert.Equal(run.Now.Captured, bench.Open().Read(BenchStudy.Key).Trials.Count);
    }

    [Fact]
    public async Task Seal_PausedRun_SealsWhatIsThere()
    {
        using var live = bench.Bench();
        var run = live.Begin(BenchStudy.Card(null, speed: 20));
        await Until(() => run.Now.Captured >= 20);
        run.Pause();
        await run.Ended.WaitAsync(Limit, Cancellation);
        live.Seal(BenchStudy.Name, BenchStudy.Key);
        var session = bench.Open().Read(BenchStudy.Key);
        Assert.True(session.Sealed);
        Assert.Equal(run.Now.Captured, session.Trials.Count);
        Assert.Null(live.Of(BenchStudy.Name));
        Assert.Null(bench.Open().OpenRunOf(BenchStudy.Key));
    }

    private static async Task Until(Func<bool> reached)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(Cancellation);
        limit.CancelAfter(Limit);
        while (!reached())
        {
            await Task.Delay(20, limit.Token);
        }
    }

    /// <summary>A simulated bench whose cable is pulled for good.</summary>
    private sealed class FailingPorts(uint afterTrials) : IBenchPorts
    {
        public IReadOnlyList<string> Names() => [SimulatedDefault.Port];

        public IReadOnlyList<HostInputDescription> InputDevices() => [];

        public (IRigPortSource Source, HostEcho? Echo) Of(OpenRun asked, double? nominalReportHz, long trialsBefore, CancellationToken stop) =>
            (new SimulatedRigPortSource(SimulatedDefault.Device(nominalReportHz), new SimulatedRigOptions { UnplugsAfterTrials = [afterTrials], UnpluggedSeconds = 86_400 }), null);

        public IRigPortSource Stick(StickCard card, CancellationToken stop) => throw new NotSupportedException();

        public IHostInputDevice Device(string path) => throw new NotSupportedException();

        public IRigPortSource Loop(string port) => throw new NotSupportedException();
    }
}
