namespace Tarry.Findings.Play;

/// <summary>What the latencies of a study mean for play.</summary>
/// <param name="Settings">What is assumed of the game and the player.</param>
/// <param name="Conditions">A finding a condition that has used trials, in the order of the document's conditions.</param>
/// <param name="Rankings">For every pair of player and window, the player of the smallest standard deviation first, the narrowest window first.</param>
/// <param name="Comparisons">Every pair of conditions once, for every pair of player and window in the order of <paramref name="Rankings"/>.</param>
public sealed record StudyPlay(
    PlaySettings Settings,
    IReadOnlyList<PlayFinding> Conditions,
    IReadOnlyList<PlayRanking> Rankings,
    IReadOnlyList<PlayComparison> Comparisons);
