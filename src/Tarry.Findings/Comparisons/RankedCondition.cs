namespace Tarry.Findings.Comparisons;

/// <summary>A condition's place in the ranking by mean.</summary>
/// <param name="Id">The condition's id.</param>
/// <param name="BestRank">The best rank that the data allow, from 1.</param>
/// <param name="WorstRank">The worst rank that the data allow.</param>
/// <param name="Group">Tie group, from 1: a group's members are not told from its first.</param>
public sealed record RankedCondition(string Id, int BestRank, int WorstRank, int Group);
