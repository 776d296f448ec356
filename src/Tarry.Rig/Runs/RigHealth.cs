using Tarry.Studies.Sessions;

namespace Tarry.Rig.Runs;

/// <summary>How rig and line are doing in a run.</summary>
/// <param name="Board">The board; null until the rig said who it is.</param>
/// <param name="Firmware">The firmware's version.</param>
/// <param name="BootId">The rig's boot counter.</param>
/// <param name="BadFramesAtHost">Frames that came in bad.</param>
/// <param name="BadFramesAtRig">Frames that the rig received bad since boot.</param>
/// <param name="LostBytesAtRig">Bytes lost in the rig's receiver since boot.</param>
/// <param name="TrialsSentAgain">Trials that had to be asked for again.</param>
/// <param name="RepeatedCommands">Commands that had to be repeated.</param>
/// <param name="Restarts">How often the rig restarted.</param>
/// <param name="Reconnections">How often the port was lost and came back.</param>
/// <param name="Clock">The clock fit so far; null while not fitted.</param>
public sealed record RigHealth(
    string? Board,
    string? Firmware,
    int? BootId,
    long BadFramesAtHost,
    int BadFramesAtRig,
    int LostBytesAtRig,
    long TrialsSentAgain,
    int RepeatedCommands,
    int Restarts,
    int Reconnections,
    ClockFitRecord? Clock);
