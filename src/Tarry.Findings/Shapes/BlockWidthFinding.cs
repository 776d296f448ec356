using Tarry.Metrology;

namespace Tarry.Findings.Shapes;

/// <summary>How wide the block is that the wait for the next report slot makes: the report interval, as far as the shape shows it.</summary>
public sealed record BlockWidthFinding
{
    /// <summary>The width with its profile-likelihood interval; null where the shape does not give one.</summary>
    public required Estimate<LatencyDifference>? Width { get; init; }

    /// <summary>Where there is no width: what it is at most, if the shape says even that.</summary>
    public required LatencyDifference? AtMost { get; init; }

    /// <summary>Where there is no width: why.</summary>
    public required BlockWidthReason? Reason { get; init; }

    /// <summary>What it was told apart from the rest of the chain by.</summary>
    public required BlockWidthEvidence Evidence { get; init; }

    /// <summary>The cross-check by moments, sqrt(12 (var L - var R) + T_ref^2); null without the reference or where that is not positive.</summary>
    public LatencyDifference? ByMoments { get; init; }

    /// <summary>Whether the cross-check agrees within three standard errors; null without it.</summary>
    public bool? MomentsAgree { get; init; }
}
