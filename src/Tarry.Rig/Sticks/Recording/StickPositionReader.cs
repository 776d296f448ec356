namespace Tarry.Rig.Sticks.Recording;

/// <summary>The position that a report tells, from -1 to 1 over the range, up being more; null where it tells none.</summary>
/// <param name="report">Its bytes.</param>
public delegate (double X, double Y)? StickPositionReader(ReadOnlySpan<byte> report);
