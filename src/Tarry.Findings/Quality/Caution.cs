namespace Tarry.Findings.Quality;

/// <summary>A caution: its kind, what it concerns and its numbers. Worded in one place, <see cref="CautionWording"/>.</summary>
/// <param name="Kind">What kind.</param>
/// <param name="Subject">What it concerns: a session's key, a condition's id, or the study.</param>
/// <param name="Numbers">Its numbers by name, with the unit in the name.</param>
public sealed record Caution(CautionKind Kind, string Subject, IReadOnlyDictionary<string, double> Numbers);
