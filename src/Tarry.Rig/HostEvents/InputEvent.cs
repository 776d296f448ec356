namespace Tarry.Rig.HostEvents;

/// <summary>One change that a device told of, in the numbers of the Linux input layer, which serve for every system here.</summary>
/// <param name="Type">What kind: <see cref="InputCode.Key"/>, <see cref="InputCode.Relative"/>, <see cref="InputCode.Absolute"/>.</param>
/// <param name="Code">Which button or axis.</param>
/// <param name="Value">For a button 1 down, 0 up, 2 repeated; for an axis its position or its step.</param>
public readonly record struct InputEvent(ushort Type, ushort Code, int Value);
