using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;

namespace Tarry.Web.Sticks;

/// <summary>One recording of a stick, on a thread of its own, and what every window is shown of it.</summary>
public sealed class StickRun : IProgress<StickProgress>, IDisposable
{
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan BetweenPictures = TimeSpan.FromMilliseconds(100);
    private readonly Study study;
    private readonly TimeProvider time;
    private readonly CancellationTokenSource stop;
    private readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly StickTrailKeeper trail = new();
    private readonly Lock showing = new();
    private volatile Picture? picture;
    private Picture? shown;
    private long picturedAt;
    private volatile bool discards;

    internal StickRun(StickCard card, Study study, TimeProvider time, CancellationTokenSource stop)
    {
        (Card, this.study, this.time, this.stop) = (card, study, time, stop);
        Now = new StickRunView(card, StickRunStanding.Recording, null, null, null, false, null);
    }

    /// <summary>Raised on any thread, about five times a second while there is something new.</summary>
    public event Action? Changed;

    /// <summary>What is recorded.</summary>
    public StickCard Card { get; }

    /// <summary>How it stands.</summary>
    public StickRunView Now { get; private set; }

    /// <summary>Whether its thread is still at work.</summary>
    public bool IsOn => !ended.Task.IsCompleted;

    /// <summary>Done when it has ended, whichever way.</summary>
    public Task Ended => ended.Task;

    /// <summary>Ends it in good order: what came is sealed.</summary>
    public void Stop()
    {
        if (IsOn && !stop.IsCancellationRequested)
        {
            stop.Cancel();
            Show(now => now with { Standing = StickRunStanding.Ending });
        }
    }

    /// <summary>Ends it, and what came is removed.</summary>
    public void Discard()
    {
        if (!stop.IsCancellationRequested)
        {
            discards = true;
            Stop();
        }
    }

    /// <inheritdoc/>
    public void Report(StickProgress value)
    {
        ArgumentNullException.ThrowIfNull(value);
        if (value.Number > 0)
        {
            trail.Add(value);
        }

        if (picture is null || value.Now != picture.Progress.Now || value.Done >= 1 || time.GetElapsedTime(picturedAt) >= BetweenPictures)
        {
            picture = new Picture(value, trail.Now());
            picturedAt = time.GetTimestamp();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => stop.Dispose();

    /// <summary>Begins on a thread of its own; lets go of the study and of what reads the stick at the end.</summary>
    internal void Start(StudyLock held, IStickWork work, Action<StickRun> onEnd) =>
        new Thread(() => Work(held, work, onEnd)) { Name = $"stick {Card.Key}", IsBackground = true }.Start();

    private void Work(StudyLock held, IStickWork work, Action<StickRun> onEnd)
    {
        Func<StickRunView, StickRunView> end;
        using (time.CreateTimer(_ => ShowIfNew(), null, Beat, Beat))
        {
            end = Record(held, work);
        }

        Show(end);
        ended.SetResult();
        onEnd(this);
    }

    private Func<StickRunView, StickRunView> Record(StudyLock held, IStickWork work)
    {
        try
        {
            StickCaptureResult result;
            using (held)
            using (work)
            {
                result = work.Record(study, held, this, () => discards, stop.Token);
            }

            var said = result.Session is { } session ? StickSaid.Of(study.File.Conditions, session) : null;
            return now => now with { Standing = said is not null ? StickRunStanding.Sealed : discards ? StickRunStanding.Discarded : StickRunStanding.Empty, Said = said, IsComplete = result.IsComplete };
        }
#pragma warning disable CA1031 // Whatever ended the recording is shown to its user; the program has other runs and windows.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            return now => now with { Standing = StickRunStanding.Failed, Problem = exception };
        }
    }

    private void ShowIfNew()
    {
        if (picture is { } newest && newest != shown)
        {
            Show(now => newest.Progress.Done >= 1 ? now with { Standing = StickRunStanding.Ending } : now);
        }
    }

    private void Show(Func<StickRunView, StickRunView> next)
    {
        lock (showing)
        {
            // A beat that was late must not say that an ended recording still records.
            if (!Now.IsOn)
            {
                return;
            }

            shown = picture;
            Now = next(Now) with { Progress = shown?.Progress, Trail = shown?.Trail };
        }

        Changed?.Invoke();
    }

    private sealed record Picture(StickProgress Progress, StickTrail? Trail);
}
