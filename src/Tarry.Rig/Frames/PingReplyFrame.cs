namespace Tarry.Rig.Frames;

/// <summary><c>K</c>: the answer to a ping.</summary>
/// <param name="Boot">The rig's boot counter.</param>
/// <param name="Number">The command's number.</param>
/// <param name="Id">The ping's own mark.</param>
/// <param name="Ticks">The tick counter when the ping's line feed came in.</param>
public sealed record PingReplyFrame(ushort Boot, byte Number, ushort Id, ulong Ticks) : RigFrame(Boot);
