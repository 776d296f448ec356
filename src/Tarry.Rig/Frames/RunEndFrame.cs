namespace Tarry.Rig.Frames;

/// <summary><c>D</c>: the run is over, with the rig's own counts since it began.</summary>
/// <param name="Boot">The rig's boot counter.</param>
/// <param name="Total">All trials.</param>
/// <param name="Responses">Trials with a response.</param>
/// <param name="Missed">Trials without.</param>
/// <param name="Early">Trials with a response too soon.</param>
/// <param name="Reason">Why it is over.</param>
public sealed record RunEndFrame(ushort Boot, uint Total, uint Responses, uint Missed, uint Early, RunEndReason Reason) : RigFrame(Boot);
