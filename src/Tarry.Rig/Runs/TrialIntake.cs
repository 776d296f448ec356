using System.Globalization;
using Tarry.Rig.ClockFit;
using Tarry.Rig.Frames;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Rig.Runs;

/// <summary>
/// Takes trials in whatever order they come and records them in the order of their numbers: a gap is waited for, a repeat
/// is compared, what is gone is recorded as refused. So the newest trial recorded says that all before it are recorded.
/// </summary>
internal sealed class TrialIntake
{
    /// <summary>The rig holds this many trials and waits when none of them is acknowledged.</summary>
    public const int HeldByRig = 24;

    private const int Remembered = 2 * HeldByRig;
    private readonly SessionRecorder recorder;
    private readonly Action<Trial> onRecorded;
    private readonly SortedDictionary<long, TrialFrame> ahead = [];
    private readonly Dictionary<long, Trial> recent = [];
    private TickExtension? press;
    private ulong counterMask;
    private int segment;

    /// <summary>An intake that goes on where a recorder's trials end.</summary>
    /// <param name="recorder">Where trials go.</param>
    /// <param name="onRecorded">Told of every trial recorded from now on.</param>
    public TrialIntake(SessionRecorder recorder, Action<Trial> onRecorded)
    {
        this.recorder = recorder;
        this.onRecorded = onRecorded;
        foreach (var trial in recorder.Trials.TakeLast(Remembered))
        {
            recent[trial.Sequence] = trial;
            Last = trial.Sequence;
        }
    }

    /// <summary>The newest trial recorded.</summary>
    public long Last { get; private set; }

    /// <summary>The newest trial that the rig is known to have finished.</summary>
    public long Finished { get; private set; }

    /// <summary>The first trials that have not come though the rig has finished them; count 0 if there are none.</summary>
    public (long From, int Count) Missing
    {
        get
        {
            var end = ahead.Count > 0 ? ahead.First().Key - 1 : Finished;
            return (Last + 1, (int)Math.Min(Math.Max(0, end - Last), HeldByRig));
        }
    }

    /// <summary>The newest trial recorded, if it came from the rig in a segment; else null.</summary>
    public Trial? NewestOf(int segmentIndex) =>
        recent.TryGetValue(Last, out var trial) && trial.Segment == segmentIndex && trial.Outcome != Outcome.Refused ? trial : null;

    /// <summary>Goes on in a segment whose counter has this width.</summary>
    public void EnterSegment(int index, int counterBits)
    {
        var pressBefore = recent.Values.Where(trial => trial.Segment == index).Max(trial => trial.PressTicks);
        press = new TickExtension(counterBits, pressBefore ?? 0);
        counterMask = (1UL << counterBits) - 1;
        segment = index;
        Finished = Last;
    }

    /// <summary>The rig has finished trials up to this one.</summary>
    public void NoteFinished(long sequence)
    {
        if (sequence <= Last + HeldByRig)
        {
            Finished = Math.Max(Finished, sequence);
        }
    }

    /// <summary>Takes a trial.</summary>
    /// <exception cref="RigException">The rig sent a known trial again, and it is not the same.</exception>
    public void Take(TrialFrame frame)
    {
        if (frame.Sequence <= Last)
        {
            if (recent.TryGetValue(frame.Sequence, out var known) && !IsSame(known, frame))
            {
                throw Contradiction(frame.Sequence);
            }
        }
        else if (frame.Sequence > Last + HeldByRig)
        {
            recorder.AddRefused(new RefusedItem(Place(frame.Sequence), string.Create(CultureInfo.InvariantCulture, $"a number that the rig cannot have reached: the newest trial recorded is {Last}")));
        }
        else if (!ahead.TryAdd(frame.Sequence, frame) && ahead[frame.Sequence] != frame)
        {
            throw Contradiction(frame.Sequence);
        }

        NoteFinished(frame.Sequence);
        RecordWhatFollows();
    }

    /// <summary>Records the next trials as refused: they will not come.</summary>
    public void GiveUp(int count, string reason)
    {
        for (; count > 0; count--)
        {
            recorder.AddRefused(new RefusedItem(Place(Last + 1), reason));
            Record(new Trial(Last + 1, segment, null, null, null, Outcome.Refused, TrialFlags.None, 0));
        }

        RecordWhatFollows();
    }

    /// <summary>The rig has lost what it held: gaps before trials that came are given up, and nothing more is finished.</summary>
    public void LeaveSegment(string reason)
    {
        while (ahead.Count > 0)
        {
            GiveUp((int)(ahead.First().Key - Last - 1), reason);
        }

        Finished = Last;
    }

    /// <summary>Whether a frame says of its trial what is recorded.</summary>
    public bool IsSame(Trial trial, TrialFrame frame) =>
        trial == ToTrial(frame, trial.PressTicks) && ((ulong)trial.PressTicks.GetValueOrDefault() & counterMask) == frame.PressTicks;

    private static string Place(long sequence) => string.Create(CultureInfo.InvariantCulture, $"seq {sequence}");

    private static RigException Contradiction(long sequence) => new(
        string.Create(CultureInfo.InvariantCulture, $"The rig sent trial {sequence} again, and it is not the trial that it sent before."),
        "Nothing recorded is lost. Check the cable and the rig's power, begin a new session, and report it with the firmware's version.");

    private void RecordWhatFollows()
    {
        while (ahead.Remove(Last + 1, out var frame))
        {
            Record(ToTrial(frame, press!.Extend(frame.PressTicks)));
        }
    }

    private void Record(Trial trial)
    {
        recorder.Append(trial);
        Last = trial.Sequence;
        Finished = Math.Max(Finished, Last);
        recent[Last] = trial;
        recent.Remove(Last - Remembered);
        onRecorded(trial);
    }

    private Trial ToTrial(TrialFrame frame, long? pressTicks) => new(
        frame.Sequence,
        segment,
        pressTicks,
        frame.LatencyTicks,
        null,
        frame.Outcome,
        frame.Flags,
        frame.Edges);
}
