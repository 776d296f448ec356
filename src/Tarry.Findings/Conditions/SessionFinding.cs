using Tarry.Metrology;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Conditions;

/// <summary>What one session adds to its condition.</summary>
/// <param name="Key">Which session.</param>
/// <param name="Counts">Its counts.</param>
/// <param name="Mean">Its mean with the precision within this session only.</param>
/// <param name="StandardDeviation">Its standard deviation over trials; null with fewer than two.</param>
/// <param name="InPool">Whether it enters the pooled variance; a caution that undoes an assumption keeps it out.</param>
/// <param name="ExclusionReasons">Why trials of it are set aside, if any are.</param>
public sealed record SessionFinding(
    SessionKey Key,
    SessionCounts Counts,
    EstimateOutcome<Latency> Mean,
    LatencyDifference? StandardDeviation,
    bool InPool,
    IReadOnlyList<string> ExclusionReasons)
{
    /// <summary>Its latencies in the order of trials, for figures; null with too few.</summary>
    public RunChart? RunChart { get; init; }
}
