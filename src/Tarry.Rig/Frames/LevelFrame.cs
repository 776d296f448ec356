namespace Tarry.Rig.Frames;

/// <summary><c>V</c>: the converter stands at a level.</summary>
/// <param name="Boot">The rig's boot counter.</param>
/// <param name="Number">The command's number.</param>
/// <param name="Level">The level in 1/65535 of the converter's reference.</param>
/// <param name="Ticks">When the converter took it over.</param>
public sealed record LevelFrame(ushort Boot, byte Number, ushort Level, ulong Ticks) : RigFrame(Boot);
