using Tarry.Metrology;
using Tarry.Rig.Frames;
using Tarry.Rig.Link;

namespace Tarry.Rig.Runs;

/// <summary>
/// Captures one of the rig's runs over one link: takes trials, asks for those that did not come, acknowledges what is on the
/// disk, pings for the clock fit, stops when there is enough.
/// </summary>
internal sealed class RunCapture(RunLedger ledger, RunTarget target, TimeProvider time, Action<RunPhase> report)
{
    /// <summary>With this many trials not acknowledged the disk is not waited for any longer: at 24 the rig would wait.</summary>
    private const int AcknowledgeAt = 20;

    private static readonly TimeSpan Tick = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan ShortestPingInterval = TimeSpan.FromSeconds(0.7);
    private static readonly TimeSpan PingIntervalSpread = TimeSpan.FromSeconds(0.6);
    private static readonly TimeSpan ClockFitInterval = TimeSpan.FromSeconds(30);
    // At a steady second the pings would fall into step with the heartbeats, and wait behind them for minutes on end.
    private readonly SeededGenerator pingIntervals = new(1);
    private long before;
    private long acknowledged;
    private long fetchNotBefore;
    private bool fetchSingly;
    private long badFrames;
    private bool stopped;
    private bool over;
    private RunEndFrame? end;

    /// <summary>The rig's newest heartbeat.</summary>
    public HeartbeatFrame? Heartbeat { get; private set; }

    /// <summary>Trials that had to be asked for again.</summary>
    public long TrialsSentAgain { get; private set; }

    /// <summary>Captures until the rig's run is over, the user cancels, or the rig is gone.</summary>
    public CaptureEnd Capture(RigLink link, CancellationToken cancellation)
    {
        (stopped, over, end, fetchSingly) = (false, false, null, false);
        acknowledged = before = ledger.Intake.Last;
        badFrames = link.BadFrames;
        var pinged = time.GetTimestamp();
        var reported = pinged;
        var fitted = pinged;
        var pingInterval = ShortestPingInterval;
        while (true)
        {
            if (!stopped && !over && (cancellation.IsCancellationRequested || target.IsReached(ledger.Intake.Last, ledger.Tally)))
            {
                stopped = link.Ask(HostCommand.Stop) is AckFrame;
            }

            Take(link, link.Next(Tick));
            if (ledger.Intake.Last - acknowledged >= AcknowledgeAt)
            {
                Acknowledge(link);
            }

            if (link.State != LinkState.Alive)
            {
                return link.State == LinkState.Restarted ? CaptureEnd.Restarted : CaptureEnd.Lost;
            }

            AskAfterABadFrame(link);
            if (Fetch(link) && over)
            {
                return Finish(link, cancellation);
            }

            if (!over && Due(ref pinged, pingInterval))
            {
                pingInterval = ShortestPingInterval + (PingIntervalSpread * pingIntervals.NextDouble());
                Ping(link);
            }

            if (Due(ref fitted, ClockFitInterval))
            {
                ledger.WriteClockFit();
            }

            if (Due(ref reported, Tick))
            {
                report(stopped ? RunPhase.Stopping : RunPhase.Running);
            }
        }
    }

    private void Ping(RigLink link)
    {
        if (link.Ping() is { } ping)
        {
            ledger.AddPing(ping.Counter, ping.SentSeconds, ping.ReceivedSeconds);
        }
    }

    private void Take(RigLink link, RigFrame? frame)
    {
        switch (frame)
        {
            case TrialFrame trial:
                ledger.Intake.Take(trial);
                break;
            case HeartbeatFrame heartbeat:
                Heartbeat = heartbeat;
                ledger.Intake.NoteFinished(heartbeat.LastSequence);
                over |= heartbeat.State == RigState.Idle;
                if (heartbeat.Unacknowledged > 0)
                {
                    Acknowledge(link);
                }

                break;
            case RunEndFrame runEnd:
                end = runEnd;
                over = true;
                ledger.Intake.NoteFinished(ledger.Segments[^1].FirstSequence - 1 + runEnd.Total);
                break;
            default:
                // An answer to a command that was repeated: its first answer was taken.
                break;
        }
    }

    /// <summary>
    /// Brings the trials to the disk and tells the rig, all but the newest: until the run is over the rig must hold one trial
    /// that is recorded here, or a program that comes back after a kill could not tell whose run the rig is in.
    /// </summary>
    private void Acknowledge(RigLink link)
    {
        var safe = ledger.Secure();
        acknowledged = safe;
        if (safe > 1)
        {
            link.Acknowledge((uint)safe - 1);
        }
    }

    /// <summary>
    /// A bad frame may have been the newest trial. It is asked for at once: if the rig restarts before the next trial shows
    /// the gap, it no longer holds it. Where there was none the rig says gone, and nothing is refused.
    /// </summary>
    private void AskAfterABadFrame(RigLink link)
    {
        if (link.BadFrames == badFrames || ledger.Intake.Missing.Count > 0)
        {
            return;
        }

        badFrames = link.BadFrames;
        if (link.Ask(HostCommand.Resend((uint)ledger.Intake.Last + 1, 1)) is AckFrame)
        {
            TrialsSentAgain++;
        }
    }

    /// <summary>Asks for trials that did not come.</summary>
    /// <returns>Whether none is missing.</returns>
    private bool Fetch(RigLink link)
    {
        var (from, count) = ledger.Intake.Missing;
        if (count == 0)
        {
            fetchSingly = false;
            return true;
        }

        if (time.GetTimestamp() < fetchNotBefore)
        {
            return false;
        }

        var asked = fetchSingly ? 1 : count;
        switch (link.Ask(HostCommand.Resend((uint)from, (byte)asked)))
        {
            case AckFrame:
                TrialsSentAgain += asked;
                fetchNotBefore = time.GetTimestamp() + (time.TimestampFrequency / 10);
                break;
            case RefusalFrame { Reason: RefusalReason.Gone } when asked == 1:
                GiveUpUnlessItCame(link, from);
                break;
            case RefusalFrame { Reason: RefusalReason.Gone }:
                fetchSingly = true;
                break;
            case RefusalFrame refusal:
                throw new RigException(
                    FormattableString.Invariant($"The rig refuses to send trials {from}..{from + asked - 1} again: {refusal.Reason}."),
                    "Put the firmware that came with this program on the board.");
            default:
                break;
        }

        return false;
    }

    /// <summary>When the answer to the first request was lost, its trials are here already, and the repeat may find them gone.</summary>
    private void GiveUpUnlessItCame(RigLink link, long sequence)
    {
        while (link.Next(TimeSpan.Zero) is { } frame)
        {
            Take(link, frame);
        }

        if (ledger.Intake.Last < sequence)
        {
            ledger.Intake.GiveUp(1, "it did not come through, and the rig no longer held it when asked");
        }
    }

    private CaptureEnd Finish(RigLink link, CancellationToken cancellation)
    {
        link.Acknowledge((uint)ledger.Secure());
        ledger.WriteClockFit();
        if (end is not null)
        {
            ledger.Reconcile(end);
        }
        else if (ledger.Intake.Last > before)
        {
            ledger.AddEvent($"segment {ledger.SegmentIndex}: the rig's own counts did not come through");
        }

        return cancellation.IsCancellationRequested && !target.IsReached(ledger.Intake.Last, ledger.Tally)
            ? CaptureEnd.Cancelled
            : CaptureEnd.RunOver;
    }

    private bool Due(ref long since, TimeSpan interval)
    {
        if (time.GetElapsedTime(since) < interval)
        {
            return false;
        }

        since = time.GetTimestamp();
        return true;
    }
}
