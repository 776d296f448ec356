using Tarry.Metrology;

namespace Tarry.Findings.Shapes;

/// <summary>The late responses of a condition: how many by the fitted shape, whether they bunch, and the extreme quantile.</summary>
public sealed record LateTailFinding
{
    /// <summary>The share of late responses by the fitted shape, beside the late share that counts them from a threshold.</summary>
    public required EstimateOutcome<Proportion> ShareByFit { get; init; }

    /// <summary>From where a response lies beyond the main block of the fitted shape; null without a shape.</summary>
    public required Latency? BlockEnd { get; init; }

    /// <summary>The interval at whose multiples late responses bunch; null where they do not.</summary>
    public required Estimate<LatencyDifference>? LumpInterval { get; init; }

    /// <summary>The lumps at its multiples; empty where there are none.</summary>
    public required IReadOnlyList<LateLump> Lumps { get; init; }

    /// <summary>The 99.9 % quantile, where the data allow limits for it.</summary>
    public required EstimateOutcome<Latency> P999 { get; init; }
}
