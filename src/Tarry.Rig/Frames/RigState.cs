namespace Tarry.Rig.Frames;

/// <summary>What the rig is doing.</summary>
public enum RigState
{
    /// <summary>No run.</summary>
    Idle,

    /// <summary>A run.</summary>
    Running,

    /// <summary>A run that waits until the host has acknowledged trials.</summary>
    WaitingForHost,

    /// <summary>A stream of readings.</summary>
    Streaming,
}
