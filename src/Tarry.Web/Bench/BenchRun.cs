using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Link;
using Tarry.Rig.Runs;
using Tarry.Studies;

namespace Tarry.Web.Bench;

/// <summary>One run on the bench, on a thread of its own, and what every window is shown of it.</summary>
public sealed class BenchRun : IProgress<RunProgress>, IDisposable
{
    private const int NewestShown = 300;
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan BetweenPictures = TimeSpan.FromMilliseconds(200);
    private readonly Study study;
    private readonly TimeProvider time;
    private readonly CancellationTokenSource stop;
    private readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly LatencyCounts latencies = new();
    private readonly Queue<double> newest = new();
    private readonly RunWatch watch;
    private readonly Lock showing = new();
    private volatile Picture? picture;
    private Picture? shown;
    private long picturedAt;
    private long seen;

    internal BenchRun(RunCard card, Study study, TimeProvider time, CancellationTokenSource stop)
    {
        Card = card;
        this.study = study;
        this.time = time;
        this.stop = stop;
        watch = new RunWatch(study, card.Key, time);
        Now = new RunView(card, RunStanding.Running, null, null, [], [], 0, null, [], null);
    }

    /// <summary>Raised on any thread, about four times a second while there is something new.</summary>
    public event Action? Changed;

    /// <summary>What is captured.</summary>
    public RunCard Card { get; }

    /// <summary>How it stands.</summary>
    public RunView Now { get; private set; }

    /// <summary>Whether its thread is still at work.</summary>
    public bool IsOn => !ended.Task.IsCompleted;

    /// <summary>Done when it has stopped, whichever way.</summary>
    public Task Ended => ended.Task;

    /// <summary>Stops it after the trial in flight; nothing is lost, and it goes on later.</summary>
    public void Pause()
    {
        if (IsOn && !stop.IsCancellationRequested)
        {
            stop.Cancel();
            Show(RunStanding.Stopping);
        }
    }

    /// <inheritdoc/>
    public void Report(RunProgress value)
    {
        ArgumentNullException.ThrowIfNull(value);
        // Reports come with every trial or two, so the newest fifty hold all since the last.
        var fresh = (int)Math.Min(value.Responses - seen, value.LastLatenciesMs.Count);
        foreach (var latency in value.LastLatenciesMs.TakeLast(Math.Max(0, fresh)))
        {
            newest.Enqueue(latency);
        }

        while (newest.Count > NewestShown)
        {
            newest.Dequeue();
        }

        seen = value.Responses;

        // Counts, latencies and shape are of the same moment, so that they agree wherever they are shown.
        if (value.Phase != RunPhase.Running || picture is null || time.GetElapsedTime(picturedAt) >= BetweenPictures)
        {
            picture = new Picture(value, latencies.InOrder(), [.. newest]);
            picturedAt = time.GetTimestamp();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => stop.Dispose();

    /// <summary>Begins on a thread of its own; lets go of the study, the rig and the echo at the end.</summary>
    internal void Start(StudyLock held, IRigPortSource source, HostEcho? echo, Action<BenchRun> onEnd)
    {
        var capture = new CaptureRun(study, held, Card.Request, source, this, echo, latencies);
        study.KeepOpenRun(held, Card.Key, Card.Asked);
        watch.LookAtReference();
        new Thread(() => Work(capture, held, echo, onEnd)) { Name = $"run {Card.Key}", IsBackground = true }.Start();
    }

    private void Work(CaptureRun capture, StudyLock held, HostEcho? echo, Action<BenchRun> onEnd)
    {
        var (standing, problem, events) = (RunStanding.Failed, default(Exception), default(IReadOnlyList<string>));
        using (time.CreateTimer(_ => ShowIfNew(), null, Beat, Beat))
        {
            try
            {
                var result = capture.Run(stop.Token);
                standing = result.Completed ? RunStanding.Sealed : RunStanding.Paused;
                events = result.Session?.Record.Events;
            }
#pragma warning disable CA1031 // Whatever ended the run is shown to its user; the program has other runs and windows.
            catch (Exception exception)
#pragma warning restore CA1031
            {
                problem = exception;
            }
            finally
            {
                echo?.Dispose();
                LetGo(held, standing);
            }
        }

        Show(standing, problem, events);
        ended.SetResult();
        onEnd(this);
    }

    private void LetGo(StudyLock held, RunStanding standing)
    {
        if (standing == RunStanding.Sealed || !study.SessionKeys.Contains(Card.Key))
        {
            study.ForgetOpenRun(held, Card.Key);
        }

        held.Dispose();
    }

    private void ShowIfNew()
    {
        if (picture is { } now && (now != shown || watch.Found.Trials != Now.LookedAt))
        {
            watch.LookIfDue(now.Progress.CapturedOnDisk);
            Show(Now.Standing);
        }
    }

    private void Show(RunStanding standing, Exception? problem = null, IReadOnlyList<string>? events = null)
    {
        lock (showing)
        {
            // A beat that was late must not say that an ended run still captures.
            if (Now.Standing is not (RunStanding.Running or RunStanding.Stopping))
            {
                return;
            }

            shown = picture;
            Now = Now with
            {
                Standing = standing,
                Progress = shown?.Progress,
                Shape = LatencyShape.Of(shown?.Latencies ?? [], watch.Reference),
                Newest = shown?.Newest ?? [],
                Cautions = watch.Found.Cautions,
                LookedAt = watch.Found.Trials,
                Problem = problem,
                Events = events ?? [],
                Remaining = Card.Remaining(shown?.Progress.Remaining),
            };
        }

        Changed?.Invoke();
    }

    private sealed record Picture(RunProgress Progress, IReadOnlyList<(long Step, long Count)> Latencies, IReadOnlyList<double> Newest);
}
