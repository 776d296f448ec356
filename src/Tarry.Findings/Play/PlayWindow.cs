using Tarry.Metrology;

namespace Tarry.Findings.Play;

/// <summary>How often a press hits one timing window, with the best constant compensation.</summary>
public sealed record PlayWindow
{
    /// <summary>The standard deviation of the player's own timing, in milliseconds.</summary>
    public required double PlayerSdMs { get; init; }

    /// <summary>The window to either side, in milliseconds.</summary>
    public required double WindowMs { get; init; }

    /// <summary>The greatest probability, over constant compensations, that a press hits; a press without a response does not.</summary>
    public required EstimateOutcome<Proportion> HitProbability { get; init; }

    /// <summary>The constant by which to press early that hits most often; null without a response.</summary>
    public required Latency? Compensation { get; init; }

    /// <summary>Every compensation whose hit probability is within one standard error of the best.</summary>
    public required IReadOnlyList<Interval<Latency>> GoodCompensations { get; init; }
}
