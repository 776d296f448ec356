using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Link;

namespace Tarry.Rig.Runs;

/// <summary>Keeps a run going over all that happens to the rig: one of the rig's runs after the other until there is enough.</summary>
internal sealed class LiveRun
{
    private readonly RunRequest request;
    private readonly RigConnection connection;
    private readonly TimeProvider time;
    private readonly RunTarget target;
    private readonly RunReporter reporter;
    private readonly HostEcho? echo;
    private bool echoes;

    public LiveRun(RunRequest request, RigConnection connection, TimeProvider time, IProgress<RunProgress>? progress, HostEcho? echo)
    {
        this.request = request;
        this.connection = connection;
        this.time = time;
        this.echo = echo;
        target = new RunTarget(request);
        reporter = new RunReporter(request.Key, target, connection, progress);
    }

    /// <summary>Whether a journal has enough.</summary>
    public bool IsReached(RunLedger ledger) => target.IsReached(ledger.Intake.Last, ledger.Tally);

    /// <summary>Opens the port; false if cancelled.</summary>
    public bool Connect(CancellationToken cancellation)
    {
        reporter.Report(RunPhase.Connecting);
        return connection.Open(cancellation);
    }

    /// <summary>Captures into a journal until it has enough, and seals it; or until cancelled.</summary>
    public RunResult Capture(RunLedger ledger, CancellationToken cancellation)
    {
        reporter.Ledger = ledger;
        BeginEcho(ledger);
        var setup = new RigRunSetup(request, target, ledger, time);
        var capture = new RunCapture(ledger, target, time, phase => reporter.Report(phase));
        reporter.Capture = capture;
        try
        {
            var inOurRun = setup.IsOurs(connection.Link);
            NoteResumption(ledger, inOurRun);
            var movedAt = time.GetTimestamp();
            while (true)
            {
                var last = ledger.Intake.Last;
                if (!inOurRun)
                {
                    reporter.Report(RunPhase.Configuring);
                    inOurRun = setup.Begin(connection.Link, cancellation);
                }

                var end = inOurRun ? capture.Capture(connection.Link, cancellation) : CaptureEnd.Lost;
                if (ledger.Intake.Last > last)
                {
                    movedAt = time.GetTimestamp();
                }
                else if (time.GetElapsedTime(movedAt) > request.ReturnLimit)
                {
                    throw new RigException("The rig says who it is, and takes no commands.", "Check the line from the host to the rig: cable, adapter, ground.");
                }

                if (end == CaptureEnd.RunOver && IsReached(ledger))
                {
                    return Seal(ledger);
                }

                if (cancellation.IsCancellationRequested || (end != CaptureEnd.RunOver && !Recover(ledger, cancellation)))
                {
                    return Stopped(ledger);
                }

                inOurRun &= end != CaptureEnd.RunOver && connection.Rig.Boot == ledger.Segments[^1].BootId;
            }
        }
        catch
        {
            // A rig whose host has failed should not go on pressing somebody's device.
            connection.StopRig();
            throw;
        }
    }

    /// <summary>Seals a journal that has enough.</summary>
    public RunResult Seal(RunLedger ledger)
    {
        reporter.Ledger = ledger;
        reporter.Report(RunPhase.Sealing);
        EndEcho(ledger);
        var session = ledger.Seal();
        return new RunResult(session, reporter.Report(RunPhase.Ended));
    }

    /// <summary>Leaves the journal, if there is one.</summary>
    public RunResult Stopped(RunLedger? ledger)
    {
        reporter.Ledger = ledger;
        EndEcho(ledger);
        ledger?.Secure();
        return new RunResult(null, reporter.Report(RunPhase.Ended));
    }

    private void BeginEcho(RunLedger ledger)
    {
        if (echo is not null)
        {
            echo.Begin();
            ledger.AddEvent($"{echo.Introduction}");
            echoes = true;
        }
    }

    private void EndEcho(RunLedger? ledger)
    {
        if (echoes)
        {
            echo!.Dispose();
            ledger?.AddEvent($"{echo.Summary}");
            echoes = false;
        }
    }

    private static void NoteResumption(RunLedger ledger, bool inOurRun)
    {
        if (ledger.Intake.Last > 0)
        {
            var how = inOurRun ? "the rig still had its run" : "the rig begins a new run";
            ledger.AddEvent($"resumed after trial {ledger.Intake.Last}: {how}");
        }
    }

    /// <summary>Gets the rig back.</summary>
    /// <returns>False if cancelled.</returns>
    private bool Recover(RunLedger ledger, CancellationToken cancellation)
    {
        var boot = connection.Rig.Boot;
        var state = connection.Link.State;
        if (state != LinkState.Restarted || !connection.Greet(cancellation))
        {
            reporter.Reconnections++;
            ledger.AddEvent($"the rig was lost after trial {ledger.Intake.Last}: {InWords(state)}");
            if (!connection.Reopen(request.ReturnLimit, () => reporter.Report(RunPhase.WaitingForRig), cancellation))
            {
                return false;
            }

            ledger.AddEvent($"the rig came back, boot {connection.Rig.Boot}");
        }

        var rig = connection.Rig;
        if (rig.Boot != boot)
        {
            reporter.Restarts++;
            ledger.Intake.LeaveSegment("it did not come through before the rig restarted");
            ledger.WriteClockFit();
            ledger.AddEvent($"the rig restarted after trial {ledger.Intake.Last}: boot {boot} to {rig.Boot}, reset cause {rig.ResetCause:x2}");
        }

        return true;
    }

    private static string InWords(LinkState state) => state switch
    {
        LinkState.Dead => "the port broke",
        LinkState.Silent => "three seconds of silence",
        LinkState.Deaf => "it took no commands",
        LinkState.Restarted => "it restarted and did not answer",
        _ => "it did not answer a command",
    };
}
