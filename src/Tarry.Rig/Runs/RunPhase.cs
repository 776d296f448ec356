namespace Tarry.Rig.Runs;

/// <summary>What a run is doing.</summary>
public enum RunPhase
{
    /// <summary>Opening the port and asking the rig who it is.</summary>
    Connecting,

    /// <summary>Setting the rig's parameters.</summary>
    Configuring,

    /// <summary>Capturing.</summary>
    Running,

    /// <summary>Waiting for the trial in flight.</summary>
    Stopping,

    /// <summary>The rig is gone; waiting for it to come back.</summary>
    WaitingForRig,

    /// <summary>Writing the sealed files.</summary>
    Sealing,

    /// <summary>Done: sealed, or left for a later run to go on with.</summary>
    Ended,
}
