namespace Tarry.Studies.StudyFiles;

/// <summary>The <c>[play]</c> table of the study file: what is assumed of the game and the player.</summary>
/// <param name="WindowsMs">Timing windows to either side of the right moment, each more than zero; null where none is stated.</param>
/// <param name="PlayerSdsMs">Standard deviations of the player's own timing, each zero or more; null where none is stated.</param>
public sealed record PlayEntry(IReadOnlyList<double>? WindowsMs, IReadOnlyList<double>? PlayerSdsMs);
