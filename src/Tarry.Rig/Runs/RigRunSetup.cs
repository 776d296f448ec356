using System.Globalization;
using Tarry.Rig.Frames;
using Tarry.Rig.Link;

namespace Tarry.Rig.Runs;

/// <summary>Gets the rig into a run of ours: begins one, or finds that the one it is in is ours.</summary>
internal sealed class RigRunSetup(RunRequest request, RunTarget target, RunLedger ledger, TimeProvider time)
{
    /// <summary>The longest that a rig stays busy after a stop: hold, time-out and re-arm at their greatest.</summary>
    private static readonly TimeSpan BusyLimit = TimeSpan.FromSeconds(95);

    private static readonly TimeSpan Moment = TimeSpan.FromMilliseconds(100);

    /// <summary>
    /// Whether the run that the rig is in, or was last in, is the journal's last one: same boot, and it sends the newest trial
    /// recorded again as it was. The tick of its press is as good as a name.
    /// </summary>
    public bool IsOurs(RigLink link)
    {
        var rig = link.Rig!;
        var newest = ledger.Intake.NewestOf(ledger.SegmentIndex);
        if (ledger.Segments[^1].BootId != rig.Boot || newest is null)
        {
            return false;
        }

        ledger.EnterSegment(rig);
        if (link.Ask(HostCommand.Resend((uint)newest.Value.Sequence, 1)) is not AckFrame)
        {
            return false;
        }

        var asked = time.GetTimestamp();
        while (link.State == LinkState.Alive && time.GetElapsedTime(asked) < RigLink.AnswerTime)
        {
            if (link.Next(Moment) is TrialFrame frame && frame.Sequence == newest.Value.Sequence)
            {
                return ledger.Intake.IsSame(newest.Value, frame);
            }
        }

        return false;
    }

    /// <summary>Ends what the rig is doing, sets its parameters and begins a run that follows the last trial recorded.</summary>
    /// <returns>False if the link failed or the user cancelled.</returns>
    /// <exception cref="RigException">The rig refuses a parameter or the run.</exception>
    public bool Begin(RigLink link, CancellationToken cancellation)
    {
        if (link.Ask(HostCommand.Stop) is null)
        {
            return false;
        }

        if (SaysARunIsOn(link))
        {
            ledger.AddEvent($"the rig was in a run that this session does not know: it was stopped, and what it held was dropped");
        }

        var last = ledger.Intake.Last;
        foreach (var (parameter, value) in RunParameters.Values(request, ledger.NextSegmentIndex, last + 1, target.Count(last)))
        {
            if (!Done(link, HostCommand.Set(parameter, (uint)value), value == parameter.Default, cancellation))
            {
                return false;
            }
        }

        if (!Done(link, HostCommand.Go, false, cancellation))
        {
            return false;
        }

        ledger.BeginSegment(link.Rig!);
        return true;
    }

    /// <summary>Sees a command done. A firmware that does not know a parameter does what the default says.</summary>
    private bool Done(RigLink link, HostCommand command, bool setsDefault, CancellationToken cancellation)
    {
        var start = time.GetTimestamp();
        while (!cancellation.IsCancellationRequested)
        {
            switch (link.Ask(command))
            {
                case null:
                    return false;
                case AckFrame:
                    return true;
                case RefusalFrame { Reason: RefusalReason.State } when time.GetElapsedTime(start) < BusyLimit:
                    SaysARunIsOn(link);
                    break;
                case RefusalFrame { Reason: RefusalReason.Key } when setsDefault:
                    return true;
                case RefusalFrame refusal:
                    throw new RigException(
                        string.Create(CultureInfo.InvariantCulture, $"The rig refuses '{command.Kind}{command.Fields}': {refusal.Reason}."),
                        "Put the firmware that came with this program on the board; if it is there, choose settings inside the ranges of docs/protocol.md.");
                default:
                    return false;
            }
        }

        return false;
    }

    /// <summary>Lets a moment pass, and with it what the rig still says of a run before.</summary>
    private bool SaysARunIsOn(RigLink link)
    {
        var start = time.GetTimestamp();
        var isOn = false;
        while (link.State == LinkState.Alive && time.GetElapsedTime(start) < Moment)
        {
            isOn |= link.Next(Moment - time.GetElapsedTime(start)) is TrialFrame or RunEndFrame or HeartbeatFrame { State: not RigState.Idle };
        }

        return isOn;
    }
}
