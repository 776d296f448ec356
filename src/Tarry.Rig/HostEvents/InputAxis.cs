namespace Tarry.Rig.HostEvents;

/// <summary>An axis of a device.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Minimum">The least value that it states.</param>
/// <param name="Maximum">The greatest.</param>
/// <param name="Value">Where it stood when it was asked.</param>
/// <param name="Fuzz">Changes up to this are held back by the kernel as noise.</param>
/// <param name="Flat">Within this of the middle it counts as at rest.</param>
public readonly record struct InputAxis(ushort Code, int Minimum, int Maximum, int Value, int Fuzz, int Flat);
