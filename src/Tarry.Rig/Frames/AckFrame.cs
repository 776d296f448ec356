namespace Tarry.Rig.Frames;

/// <summary><c>A</c>: a command was done.</summary>
/// <param name="Boot">The rig's boot counter.</param>
/// <param name="Number">The command's number.</param>
/// <param name="Kind">The command's kind.</param>
public sealed record AckFrame(ushort Boot, byte Number, char Kind) : RigFrame(Boot);
