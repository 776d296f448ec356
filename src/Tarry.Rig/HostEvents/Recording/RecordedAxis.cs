namespace Tarry.Rig.HostEvents.Recording;

/// <summary>What an axis of a recording can say, as its device states it.</summary>
/// <param name="Column">The column of its field.</param>
/// <param name="Minimum">The least value.</param>
/// <param name="Maximum">The greatest.</param>
public sealed record RecordedAxis(string Column, int Minimum, int Maximum);
