using Tarry.Metrology;

namespace Tarry.Findings.Play;

/// <summary>One pair of conditions in one timing window, each with its own best compensation.</summary>
public sealed record PlayComparison
{
    /// <summary>The first condition's id.</summary>
    public required string A { get; init; }

    /// <summary>The second condition's id.</summary>
    public required string B { get; init; }

    /// <summary>The standard deviation of the player's own timing, in milliseconds.</summary>
    public required double PlayerSdMs { get; init; }

    /// <summary>The window to either side, in milliseconds.</summary>
    public required double WindowMs { get; init; }

    /// <summary>Hit probability of a less that of b, within sittings where they share some: positive when a hits more often.</summary>
    public required EstimateOutcome<ProportionDifference> Difference { get; init; }

    /// <summary>Probability of such a difference between equal conditions, Holm-adjusted over the pairs of this player and window; null with one sitting.</summary>
    public required double? AdjustedP { get; init; }
}
