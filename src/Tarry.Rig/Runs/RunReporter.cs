using Tarry.Studies.Sessions;

namespace Tarry.Rig.Runs;

/// <summary>Tells the user where a run stands.</summary>
internal sealed class RunReporter(SessionKey key, RunTarget target, RigConnection connection, IProgress<RunProgress>? progress)
{
    private const int LatenciesShown = 50;

    /// <summary>The journal, once there is one.</summary>
    public RunLedger? Ledger { get; set; }

    /// <summary>The capture, once there is one.</summary>
    public RunCapture? Capture { get; set; }

    /// <summary>How often the rig restarted.</summary>
    public int Restarts { get; set; }

    /// <summary>How often the port was lost.</summary>
    public int Reconnections { get; set; }

    /// <summary>Tells where the run stands.</summary>
    public RunProgress Report(RunPhase phase)
    {
        var report = Progress(phase);
        progress?.Report(report);
        return report;
    }

    private RunProgress Progress(RunPhase phase)
    {
        var tally = Ledger?.Tally ?? new RunTally();
        return new RunProgress(
            key.ToString(),
            phase,
            Ledger?.CapturedOnDisk ?? 0,
            tally.Responses,
            tally.Missed,
            tally.Early,
            tally.Refused,
            tally.Precision.MeanMs,
            tally.Precision.HalfWidthMs,
            target.Remaining(Ledger?.Intake.Last ?? 0, tally),
            tally.Precision.Newest(LatenciesShown),
            Health());
    }

    private RigHealth Health() => new(
        connection.RigIfKnown?.Board,
        connection.RigIfKnown?.Firmware,
        connection.RigIfKnown?.Boot,
        Ledger?.BadFrames ?? 0,
        Capture?.Heartbeat?.BadFrames ?? 0,
        Capture?.Heartbeat?.LostBytes ?? 0,
        Capture?.TrialsSentAgain ?? 0,
        connection.RepeatedCommands,
        Restarts,
        Reconnections,
        Ledger?.LastFit);
}
