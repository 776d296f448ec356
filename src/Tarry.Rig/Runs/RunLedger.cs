using System.Globalization;
using Tarry.Rig.ClockFit;
using Tarry.Rig.Frames;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Rig.Runs;

/// <summary>What a run writes into its session's journal: trials, segments, clock fits, what was bad and what happened.</summary>
internal sealed class RunLedger : IDisposable
{
    private readonly SessionRecorder recorder;
    private RigClockFit? clock;
    private TickExtension? pingTicks;
    private bool firstSegmentIsNew;

    /// <summary>A ledger over an open journal.</summary>
    /// <param name="recorder">The journal; the ledger disposes of it.</param>
    /// <param name="isNew">Whether it was begun for this run, so that its first segment is still to be used.</param>
    /// <param name="latencies">Takes every latency, those of before too; null for nobody.</param>
    public RunLedger(SessionRecorder recorder, bool isNew, LatencyCounts? latencies = null)
    {
        this.recorder = recorder;
        Tally = new RunTally(latencies);
        firstSegmentIsNew = isNew;
        Segments = recorder.Record.Segments;
        Intake = new TrialIntake(recorder, Count);
        var segment = 0;
        foreach (var trial in recorder.Trials)
        {
            if (trial.Segment != segment)
            {
                Tally.BeginRun();
                segment = trial.Segment;
            }

            Count(trial);
        }

        if (segment != Segments.Count - 1)
        {
            Tally.BeginRun();
        }
    }

    public TrialIntake Intake { get; }

    public RunTally Tally { get; }

    /// <summary>The segments so far.</summary>
    public IReadOnlyList<Segment> Segments { get; private set; }

    /// <summary>The index of the present segment.</summary>
    public int SegmentIndex => Segments.Count - 1;

    /// <summary>The index that the next segment will have.</summary>
    public int NextSegmentIndex => firstSegmentIsNew ? 0 : Segments.Count;

    /// <summary>Trials that are safe on the disk.</summary>
    public long CapturedOnDisk => recorder.DurableSequence;

    /// <summary>Frames that came in bad.</summary>
    public long BadFrames { get; private set; }

    /// <summary>The present segment's clock fit, as last written.</summary>
    public ClockFitRecord? LastFit { get; private set; }

    /// <summary>Begins a segment: the rig begins a run.</summary>
    public void BeginSegment(HelloFrame rig)
    {
        if (!firstSegmentIsNew || Segments[0].BootId != rig.Boot)
        {
            recorder.BeginSegment(new Segment(rig.Boot, Intake.Last + 1, rig.TickHz, null));
            Segments = recorder.Record.Segments;
        }

        firstSegmentIsNew = false;
        Tally.BeginRun();
        EnterSegment(rig);
    }

    /// <summary>Goes on in the present segment.</summary>
    public void EnterSegment(HelloFrame rig)
    {
        Intake.EnterSegment(SegmentIndex, rig.CounterBits);
        clock = new RigClockFit(rig.TickHz);
        pingTicks = new TickExtension(rig.CounterBits);
        LastFit = null;
    }

    /// <summary>Takes a ping.</summary>
    public void AddPing(ulong counter, double sentSeconds, double receivedSeconds) =>
        clock?.Add(new PingReading(sentSeconds, receivedSeconds, pingTicks!.Extend(counter)));

    /// <summary>Writes the present segment's clock fit, where there is one.</summary>
    public void WriteClockFit()
    {
        if (clock?.Fit() is { } fit)
        {
            LastFit = fit;
            recorder.SetClockFit(SegmentIndex, fit);
        }
    }

    /// <summary>Writes a bad frame with its bytes.</summary>
    public void AddBadFrame(FrameResult bad)
    {
        BadFrames++;
        recorder.AddRefused(new RefusedItem(
            string.Create(CultureInfo.InvariantCulture, $"bad frame {BadFrames}, after seq {Intake.Last}"),
            bad.Describe()));
    }

    /// <summary>Writes what happened.</summary>
    public void AddEvent(FormattableString text) => recorder.AddEvent(FormattableString.Invariant(text));

    /// <summary>Compares the rig's counts of its run with what was recorded of it. One disagreement is one for the session.</summary>
    public void Reconcile(RunEndFrame rig)
    {
        var difference = Tally.Difference(rig);
        if (difference is not null)
        {
            recorder.AddEvent($"segment {SegmentIndex.ToString(CultureInfo.InvariantCulture)}: {difference}");
        }

        recorder.SetCountsReconciled(difference is null && recorder.Record.CountsReconciled != false);
    }

    /// <summary>Brings everything recorded to the disk.</summary>
    /// <returns>The newest trial that is safe.</returns>
    public long Secure()
    {
        recorder.Flush();
        return recorder.DurableSequence;
    }

    /// <summary>Seals the session.</summary>
    public SessionData Seal() => recorder.Seal();

    /// <inheritdoc/>
    public void Dispose() => recorder.Dispose();

    private void Count(Trial trial) => Tally.Add(trial, Segments[trial.Segment], recorder.Record.Run);
}
