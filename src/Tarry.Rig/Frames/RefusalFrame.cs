namespace Tarry.Rig.Frames;

/// <summary><c>N</c>: a command was not done.</summary>
/// <param name="Boot">The rig's boot counter.</param>
/// <param name="Number">The command's number.</param>
/// <param name="Kind">The command's kind.</param>
/// <param name="Reason">Why not.</param>
public sealed record RefusalFrame(ushort Boot, byte Number, char Kind, RefusalReason Reason) : RigFrame(Boot);
