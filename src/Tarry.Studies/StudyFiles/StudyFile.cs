namespace Tarry.Studies.StudyFiles;

/// <summary>The study file as read.</summary>
/// <param name="Title">The study's title.</param>
/// <param name="Reference">The reference condition's id, or null where none is named.</param>
/// <param name="MarginMs">The smallest difference that matters, in milliseconds, more than zero.</param>
/// <param name="Conditions">The conditions, in file order.</param>
/// <param name="Exclusions">The exclusions, in file order.</param>
public sealed record StudyFile(
    string Title,
    string? Reference,
    double MarginMs,
    IReadOnlyList<ConditionEntry> Conditions,
    IReadOnlyList<Exclusion> Exclusions)
{
    /// <summary>What is assumed of the game and the player; null where the file has no <c>[play]</c> table.</summary>
    public PlayEntry? Play { get; init; }
}
