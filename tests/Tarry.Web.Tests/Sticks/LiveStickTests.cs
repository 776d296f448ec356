using Tarry.Findings.Sticks.Measures;
using Tarry.Rig;
using Tarry.Rig.HostEvents;
using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Web.Bench;
using Tarry.Web.Sticks;
using Tarry.Web.Tests.Bench;

namespace Tarry.Web.Tests.Sticks;

public sealed class LiveStickTests : IDisposable
{
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(30);
    private readonly BenchStudy bench = new();

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task Begin_SimulatedStick_IsSealedToldToTheStudyAndJudged()
    {
        using var live = bench.Bench();
        var told = 0;
        bench.Desks.Of(BenchStudy.Name)!.Changed += () => Interlocked.Increment(ref told);
        var run = live.Begin(Card(StickProcedure.RimSweep));
        await run.Ended.WaitAsync(Limit, Cancellation);
        Assert.Equal((StickRunStanding.Sealed, true), (run.Now.Standing, run.Now.IsComplete));
        Assert.Equal(60_000, bench.Open().ReadStick(run.Card.Key).Samples.Count);
        await Until(() => Volatile.Read(ref told) > 0);

        var said = run.Now.Said!;
        Assert.Equal(60_000, said.Positions);
        Assert.Empty(said.Lacks);
        // The simulated stick reaches 0.96 along x and 0.93 along y; the difference is 100 (Rx / Ry - 1).
        var reach = Estimate(said, StickMeasure.GainDifference);
        Assert.InRange(reach.Value, 100 * ((0.96 / 0.93) - 1) - 0.5, 100 * ((0.96 / 0.93) - 1) + 0.5);
        Assert.DoesNotContain(said.Refusals, refusal => refusal.Sentence.Contains("No session shows it", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Stop_InMidProcedure_SealsWhatCameAndSaysWhatItLacks()
    {
        using var live = bench.Bench();
        var run = live.Begin(Card(StickProcedure.RimSweep, speed: 20));
        await Until(() => run.Now.Progress is { Seconds: > 12 });
        Assert.NotNull(run.Now.Trail);
        run.Stop();
        await run.Ended.WaitAsync(Limit, Cancellation);
        Assert.Equal((StickRunStanding.Sealed, false), (run.Now.Standing, run.Now.IsComplete));
        Assert.Contains(run.Now.Said!.Lacks, lack => lack.Contains("turning clockwise", StringComparison.Ordinal));
        Assert.Contains(run.Now.Said.Refusals, refusal => refusal.Measures.Any(result => result.Measure == StickMeasure.Hysteresis));
        Assert.Equal(run.Now.Said.Positions, bench.Open().ReadStick(run.Card.Key).Samples.Count);
    }

    [Fact]
    public async Task Discard_InMidProcedure_KeepsNothingAndTheSessionIsFree()
    {
        using var live = bench.Bench();
        var run = live.Begin(Card(StickProcedure.RimSweep, speed: 20));
        await Until(() => run.Now.Progress is { Seconds: > 12 });
        run.Discard();
        await run.Ended.WaitAsync(Limit, Cancellation);
        Assert.Equal(StickRunStanding.Discarded, run.Now.Standing);
        Assert.Empty(bench.Open().StickKeys);
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(bench.Folder, "recordings")));
        var again = live.Begin(Card(StickProcedure.RimSweep));
        await again.Ended.WaitAsync(Limit, Cancellation);
        Assert.Equal(StickRunStanding.Sealed, again.Now.Standing);
    }

    [Fact]
    public async Task Stop_BeforeAnythingOfTheProcedureCame_KeepsNothing()
    {
        using var live = bench.Bench();
        var card = Card(StickProcedure.Rest, speed: 1);
        var run = live.Begin(card with { Request = card.Request with { ReadySeconds = 60 } });
        await Until(() => run.Now.Progress is { Number: 0 });
        run.Stop();
        await run.Ended.WaitAsync(Limit, Cancellation);
        Assert.Equal(StickRunStanding.Empty, run.Now.Standing);
        Assert.Empty(bench.Open().StickKeys);
    }

    [Fact]
    public async Task Changed_TwoWindows_SeeTheSame()
    {
        using var live = bench.Bench();
        var run = live.Begin(Card(StickProcedure.RimSweep, speed: 10));
        var (first, second) = (new List<StickRunView>(), new List<StickRunView>());
        run.Changed += () => first.Add(run.Now);
        run.Changed += () => second.Add(run.Now);
        await run.Ended.WaitAsync(Limit, Cancellation);
        Assert.Same(run, live.StickOf(BenchStudy.Name));
        Assert.Equal(first, second);
        Assert.Equal(StickRunStanding.Sealed, first[^1].Standing);
        Assert.InRange(first.Count, 10, 100);
    }

    [Fact]
    public async Task Begin_WhileTheStudyIsBusy_IsRefusedBothWays()
    {
        using var live = bench.Bench();
        var recording = live.Begin(Card(StickProcedure.Rest, speed: 1));
        Assert.Contains("recording monday.quill-usb.rest", Assert.Throws<StudyException>(() => live.Begin(BenchStudy.Card(10))).Message, StringComparison.Ordinal);
        Assert.Contains("still on", Assert.Throws<StudyException>(() => live.Begin(Card(StickProcedure.RimSweep))).Message, StringComparison.Ordinal);
        recording.Discard();
        await recording.Ended.WaitAsync(Limit, Cancellation);
        var run = live.Begin(BenchStudy.Card(null, speed: 1));
        Assert.Contains("The run monday.quill-usb", Assert.Throws<StudyException>(() => live.Begin(Card(StickProcedure.Rest))).Message, StringComparison.Ordinal);
        run.Pause();
        await run.Ended.WaitAsync(Limit, Cancellation);
    }

    [Fact]
    public async Task Begin_OfWhatCannotBe_IsRefusedAndLeavesTheStudyFree()
    {
        using var live = bench.Bench();
        Assert.Throws<RigException>(() => live.Begin(Card(StickProcedure.Rest) with { Source = "/etc/passwd" }));
        Assert.Throws<HostInputException>(() => live.Begin(Card(StickProcedure.Rest) with { Source = "/etc/passwd", IsOfDevice = true }));
        Assert.Contains("not declared", Assert.Throws<StudyException>(() => live.Begin(Card(StickProcedure.Rest) with { Key = new SessionKey("monday", "nothing", StickProcedure.Rest) })).Message, StringComparison.Ordinal);
        var sealedOne = live.Begin(Card(StickProcedure.Rest));
        await sealedOne.Ended.WaitAsync(Limit, Cancellation);
        Assert.Contains("is there already", Assert.Throws<StudyException>(() => live.Begin(Card(StickProcedure.Rest))).Message, StringComparison.Ordinal);
        bench.Open().AcquireLock("tests").Dispose();
    }

    [Fact]
    public async Task StopAll_RecordingUnderWay_SealsWhatCame()
    {
        using var live = bench.Bench();
        var run = live.Begin(Card(StickProcedure.Rest, speed: 20));
        await Until(() => run.Now.Progress is { Seconds: > 12 });
        await Task.Run(live.StopAll, Cancellation).WaitAsync(Limit, Cancellation);
        Assert.Equal(StickRunStanding.Sealed, run.Now.Standing);
        Assert.Equal(run.Now.Said!.Positions, bench.Open().ReadStick(run.Card.Key).Samples.Count);
    }

    [Fact]
    public async Task Begin_DeviceOfThisComputer_IsSealedWithYUpAndClosed()
    {
        using var device = new FakeDevice(TimeProvider.System);
        using var live = bench.Bench(device);
        // The steps of a sweep in 17 s: the first is over in 0.8.
        var card = Card(StickProcedure.RimSweep) with { Source = FakeDevice.Path, IsOfDevice = true, Request = new StickRecordingRequest(StickProcedure.RimSweep) { Seconds = 17 } };
        var run = live.Begin(card);
        await Until(() => run.Now.Progress is { Seconds: > 2.5 });
        Assert.Contains("is at work here already", Assert.Throws<RigException>(() => live.Begin(card)).Message, StringComparison.Ordinal);
        run.Stop();
        await run.Ended.WaitAsync(Limit, Cancellation);
        Assert.Null(run.Now.Problem);
        Assert.True(device.IsClosed);
        var session = bench.Open().ReadStick(card.Key);
        Assert.Equal((StickSetup.FromHostEvents, new StickRange(0, 255, 1)), (session.Setup.Source, session.Setup.X));

        // It turns counter-clockwise with y up: the angle grows.
        var angles = Enumerable.Range(0, 20).Select(index => Math.Atan2(session.Samples.Y[index] - 127.5, session.Samples.X[index] - 127.5)).ToList();
        Assert.All(Enumerable.Range(1, 19), index => Assert.True(Math.IEEERemainder(angles[index] - angles[index - 1], 2 * Math.PI) > 0));
        Assert.True(run.Now.Trail!.Positions.All(position => Math.Abs(Math.Sqrt((position.X * position.X) + (position.Y * position.Y)) - 1) < 0.02));
    }

    private static StickCard Card(StickProcedure procedure, double? speed = null) =>
        new(BenchStudy.Name, new SessionKey("monday", "quill-usb", procedure), SimulatedDefault.Port, new StickRecordingRequest(procedure), speed);

    private static StickEstimate Estimate(StickSaid said, StickMeasure measure) =>
        (StickEstimate)said.Estimates.First(result => result.Measure == measure).Outcome;

    private static async Task Until(Func<bool> reached)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(Cancellation);
        limit.CancelAfter(Limit);
        while (!reached())
        {
            await Task.Delay(20, limit.Token);
        }
    }
}
