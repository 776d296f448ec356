using Tarry.Metrology;

namespace Tarry.Findings.Play;

/// <summary>What the latencies of one condition mean for play: a constant delay can be learned, an erratic one cannot.</summary>
public sealed record PlayFinding
{
    /// <summary>The condition's id.</summary>
    public required string Id { get; init; }

    /// <summary>The best constant compensation for the timing error: the median of the responses, sessions weighing alike; null without a response.</summary>
    public required Latency? Learned { get; init; }

    /// <summary>The device's mean absolute timing error about <see cref="Learned"/>, of responses that arrived.</summary>
    public required EstimateOutcome<LatencyDifference> DeviceError { get; init; }

    /// <summary>The same with the player's own error, a value a player, in the order of <see cref="PlaySettings.PlayerSdsMs"/>; empty without a response.</summary>
    public required IReadOnlyList<double> ErrorsWithPlayerMs { get; init; }

    /// <summary>The probability to hit for every player and window, players outermost, in the order of the settings.</summary>
    public required IReadOnlyList<PlayWindow> Windows { get; init; }

    /// <summary>The probability to hit over the window, a curve a player.</summary>
    public required IReadOnlyList<PlayCurve> Curves { get; init; }
}
