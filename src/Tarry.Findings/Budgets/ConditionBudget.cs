using Tarry.Metrology;

namespace Tarry.Findings.Budgets;

/// <summary>The uncertainty budget of a condition, and its latencies stated in absolute terms.</summary>
/// <param name="Calibrated">Whether a calibration of the rig holds for every session; else limits of its class stand in.</param>
/// <param name="Inputs">What stands between the truth and the latencies, without sampling, which differs from statistic to statistic.</param>
/// <param name="BetweenSessions">The standard deviation between sessions, by analysis of variance; null with one session.</param>
/// <param name="WithinSessions">The standard deviation within them; null with one session.</param>
/// <param name="Mean">The mean; null where there is no estimate, as with the others.</param>
/// <param name="Median">The median.</param>
/// <param name="P05">The 5 % quantile.</param>
/// <param name="P95">The 95 % quantile.</param>
/// <param name="P99">The 99 % quantile.</param>
public sealed record ConditionBudget(
    bool Calibrated,
    IReadOnlyList<BudgetInput> Inputs,
    LatencyDifference? BetweenSessions,
    LatencyDifference? WithinSessions,
    AbsoluteLatency? Mean,
    AbsoluteLatency? Median,
    AbsoluteLatency? P05,
    AbsoluteLatency? P95,
    AbsoluteLatency? P99);
