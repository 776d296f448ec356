using Tarry.Findings.Comparisons;

namespace Tarry.Findings.Play;

/// <summary>The conditions by hit probability for one player and window, the highest first, with the ranks that the data allow.</summary>
/// <param name="PlayerSdMs">The standard deviation of the player's own timing, in milliseconds.</param>
/// <param name="WindowMs">The window to either side, in milliseconds.</param>
/// <param name="Conditions">The conditions.</param>
public sealed record PlayRanking(double PlayerSdMs, double WindowMs, IReadOnlyList<RankedCondition> Conditions);
