namespace Tarry.Imports.Recordings;

/// <summary>Where a recording stops making sense, and why. What was read before it is kept.</summary>
/// <param name="Offset">The byte, from 0.</param>
/// <param name="Problem">What is wrong there, in words.</param>
internal sealed record RecordingDamage(long Offset, string Problem);
