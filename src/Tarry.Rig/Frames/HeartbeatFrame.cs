namespace Tarry.Rig.Frames;

/// <summary><c>P</c>: the rig lives; once a second.</summary>
/// <param name="Boot">The rig's boot counter.</param>
/// <param name="Ticks">The tick counter.</param>
/// <param name="LastSequence">The newest finished trial, 0 for none.</param>
/// <param name="State">What the rig is doing.</param>
/// <param name="Unacknowledged">Finished trials not yet acknowledged.</param>
/// <param name="BadFrames">Frames that the rig received bad since boot; sticks at 65,535.</param>
/// <param name="LostBytes">Bytes lost in the rig's receiver since boot; sticks at 65,535.</param>
public sealed record HeartbeatFrame(
    ushort Boot,
    ulong Ticks,
    uint LastSequence,
    RigState State,
    ushort Unacknowledged,
    ushort BadFrames,
    ushort LostBytes) : RigFrame(Boot);
