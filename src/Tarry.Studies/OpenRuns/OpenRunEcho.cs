namespace Tarry.Studies.OpenRuns;

/// <summary>Which input of the host answers a press.</summary>
/// <param name="Device">The input device.</param>
/// <param name="Code">What of it is the press; null for any button.</param>
/// <param name="Level">Of an axis: the value whose crossing is the press.</param>
/// <param name="Falling">The axis crosses it downwards, or the bit falls.</param>
/// <param name="Exclusive">The device's events are kept from other programs.</param>
public sealed record OpenRunEcho(string Device, string? Code, int? Level, bool Falling, bool Exclusive);
