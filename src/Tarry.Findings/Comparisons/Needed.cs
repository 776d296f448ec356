namespace Tarry.Findings.Comparisons;

/// <summary>What it takes to tell a difference of the margin with 80 % power, at the pair's share of the 5 % that all pairs of the study have together.</summary>
/// <param name="Sittings">Sittings in all, each with both conditions.</param>
/// <param name="TrialsPerSession">Trials in each session.</param>
public sealed record Needed(int Sittings, int TrialsPerSession);
