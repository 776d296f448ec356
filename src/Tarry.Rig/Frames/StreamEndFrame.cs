namespace Tarry.Rig.Frames;

/// <summary><c>E</c>: the stream of readings is over.</summary>
/// <param name="Boot">The rig's boot counter.</param>
/// <param name="Total">Readings numbered since it began.</param>
/// <param name="Lost">Those of them that found no room in the rig; sticks at 65,535.</param>
public sealed record StreamEndFrame(ushort Boot, uint Total, ushort Lost) : RigFrame(Boot);
