namespace Tarry.Findings.Comparisons;

/// <summary>What it takes to tell a difference of the margin with 80 % power.</summary>
/// <param name="Sittings">Sittings in all, each with both conditions.</param>
/// <param name="TrialsPerSession">Trials in each session.</param>
public sealed record Needed(int Sittings, int TrialsPerSession);
