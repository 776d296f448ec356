namespace Tarry.Findings.Contrasts;

/// <summary>One side of a contrast.</summary>
/// <param name="StudyTitle">The study's title.</param>
/// <param name="Reference">The study's reference condition; null if it names none.</param>
/// <param name="Condition">The condition.</param>
/// <param name="Sessions">Its sessions with used trials.</param>
public sealed record ContrastSide(string StudyTitle, string? Reference, string Condition, int Sessions);
