namespace Tarry.Rig.Frames;

/// <summary><c>B</c>: the rig says who it is, at reset and when asked.</summary>
/// <param name="Boot">The rig's boot counter.</param>
/// <param name="Protocol">The protocol's version.</param>
/// <param name="ResetCause">01 power-on, 02 reset pin, 04 brown-out, 08 watchdog, 00 unknown; a bit mask.</param>
/// <param name="TickHz">Timer ticks a second as stated.</param>
/// <param name="CounterBits">Width of the tick counter, which wraps at 2 to this power.</param>
/// <param name="Board">The board.</param>
/// <param name="Firmware">The firmware's version.</param>
public sealed record HelloFrame(
    ushort Boot,
    byte Protocol,
    byte ResetCause,
    uint TickHz,
    byte CounterBits,
    string Board,
    string Firmware) : RigFrame(Boot);
