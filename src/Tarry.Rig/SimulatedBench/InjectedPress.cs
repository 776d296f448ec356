namespace Tarry.Rig.SimulatedBench;

/// <summary>The truth of one simulated press, to compare with what was measured.</summary>
/// <param name="Sequence">The trial's number.</param>
/// <param name="PressTicks">The tick counter at the press, before it wraps, since the rig's last start.</param>
/// <param name="LatencyTicks">From the press to the first edge, as a perfect reading of the rig's counter has it; null for none.</param>
/// <param name="LatencyUs">From the contact to the effect in true time, without what the rig adds; null for none.</param>
public readonly record struct InjectedPress(uint Sequence, long PressTicks, long? LatencyTicks, double? LatencyUs);
