using Tarry.Studies.Trials;

namespace Tarry.Rig.Frames;

/// <summary><c>T</c>: one trial. Fixed widths make two equal frames equal to the byte.</summary>
/// <param name="Boot">The rig's boot counter.</param>
/// <param name="Sequence">Its number, from 1.</param>
/// <param name="PressTicks">The tick counter at the press, not yet extended past its wrap.</param>
/// <param name="LatencyTicks">Ticks from the press to the first response; null for a miss.</param>
/// <param name="Outcome">Response, missed or early; the rig refuses nothing.</param>
/// <param name="Flags">What else happened.</param>
/// <param name="Edges">Response edges seen until re-arm, 255 at most.</param>
public sealed record TrialFrame(
    ushort Boot,
    uint Sequence,
    ulong PressTicks,
    uint? LatencyTicks,
    Outcome Outcome,
    TrialFlags Flags,
    byte Edges) : RigFrame(Boot);
