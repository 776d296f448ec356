using Tarry.Findings.Budgets;
using Tarry.Findings.Comparisons;
using Tarry.Findings.DeviceOnly;
using Tarry.Findings.Quality;
using Tarry.Findings.ReportIntervals;
using Tarry.Findings.Shapes;
using Tarry.Metrology;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Conditions;

/// <summary>What the trials of one condition say.</summary>
public sealed record ConditionFinding
{
    /// <summary>The condition's id.</summary>
    public required string Id { get; init; }

    /// <summary>Its factors and their levels, in the study file's order.</summary>
    public required IReadOnlyDictionary<string, string> Factors { get; init; }

    /// <summary>The report rate that the maker states.</summary>
    public required double? NominalReportHz { get; init; }

    /// <summary>Whether it is the study's reference.</summary>
    public required bool IsReference { get; init; }

    /// <summary>What its sessions say of the way from contact to sensor.</summary>
    public required ChainFinding Chain { get; init; }

    /// <summary>Its sessions, by sitting; also those of which nothing is used.</summary>
    public required IReadOnlyList<SessionFinding> Sessions { get; init; }

    /// <summary>How many sessions have used trials.</summary>
    public int UsedSessions => Sessions.Count(session => session.Counts.Used > 0);

    /// <summary>Its counts.</summary>
    public required SessionCounts Counts { get; init; }

    /// <summary>The mean of the session means: of responses that arrived.</summary>
    public required EstimateOutcome<Latency> Mean { get; init; }

    /// <summary>How the variance of the session means was moderated; null with one session.</summary>
    public ModeratedScatter? MeanScatter { get; init; }

    /// <summary>With one session: the mean with the between-session scatter of the other conditions added; else null.</summary>
    public required Estimate<Latency>? MeanWithBetweenSessions { get; init; }

    /// <summary>The median over all trials; misses count as later than any response.</summary>
    public required EstimateOutcome<Latency> Median { get; init; }

    /// <summary>The 5 % quantile.</summary>
    public required EstimateOutcome<Latency> P05 { get; init; }

    /// <summary>The 25 % quantile.</summary>
    public required EstimateOutcome<Latency> P25 { get; init; }

    /// <summary>The 75 % quantile.</summary>
    public required EstimateOutcome<Latency> P75 { get; init; }

    /// <summary>The 95 % quantile.</summary>
    public required EstimateOutcome<Latency> P95 { get; init; }

    /// <summary>The 99 % quantile.</summary>
    public required EstimateOutcome<Latency> P99 { get; init; }

    /// <summary>The standard deviation within a session, pooled over sessions.</summary>
    public required EstimateOutcome<LatencyDifference> StandardDeviation { get; init; }

    /// <summary>p95 - p5 within a session, root mean square over sessions.</summary>
    public required EstimateOutcome<LatencyDifference> Spread { get; init; }

    /// <summary>The share of responses later than <see cref="LateBeyond"/>.</summary>
    public required EstimateOutcome<Proportion> LateShare { get; init; }

    /// <summary>From where a response counts as late, and why there.</summary>
    public required LateDefinition? LateBeyond { get; init; }

    /// <summary>The share of presses without a response.</summary>
    public required EstimateOutcome<Proportion> MissedShare { get; init; }

    /// <summary>Its mean less the reference's, within sittings; null for the reference itself.</summary>
    public required EstimateOutcome<LatencyDifference>? Relative { get; init; }

    /// <summary>Its latencies in absolute terms with the rig's own uncertainty, beside the intervals above; null where nothing is used.</summary>
    public ConditionBudget? Budget { get; init; }

    /// <summary>Its report interval, or why none is claimed; null where it was not looked for.</summary>
    public ReportIntervalFinding? ReportInterval { get; init; }

    /// <summary>The density of its latencies for figures; null with too few.</summary>
    public required DensityCurve? Density { get; init; }

    /// <summary>The distribution function of its latencies with its band, for figures; null with too few, or where they are known as intervals only.</summary>
    public DistributionCurve? Distribution { get; init; }

    /// <summary>The shape of its latencies; null where none was looked for.</summary>
    public ShapeOutcome? Shape { get; init; }

    /// <summary>How wide a block its wait for the report slot makes; null where no shape was looked for.</summary>
    public BlockWidthFinding? BlockWidth { get; init; }

    /// <summary>Its late responses; null where no shape was looked for.</summary>
    public LateTailFinding? LateTail { get; init; }

    /// <summary>The delay of the device alone, without the chain; null for the reference itself.</summary>
    public DeviceOnlyFinding? DeviceOnly { get; init; }

    /// <summary>What the reader must know beside these results.</summary>
    public required IReadOnlyList<Caution> Cautions { get; init; }
}
