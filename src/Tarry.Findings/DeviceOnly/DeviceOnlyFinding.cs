using Tarry.Metrology;

namespace Tarry.Findings.DeviceOnly;

/// <summary>The delay of the device alone: what is left of a condition's latency when the chain, as the reference measured it, is taken out.</summary>
/// <remarks>
/// A condition's latency is L = D + R, D the device's own delay with the wait for its own report slot inside, R the chain as the
/// reference meets it without the wait for the reference's report slot. Zero on the axis of D is a device that hands its report
/// on in the instant in which the reference would, had it no slot to wait for: D is the delay in excess of the reference's fixed delay.
/// What was measured of the reference holds that wait, uniform over its report interval T: mean D = mean L - mean R + T/2,
/// var D = var L - var R + T^2/12.
/// </remarks>
public sealed record DeviceOnlyFinding
{
    /// <summary>The mean of D: the condition's difference from the reference, and half the reference's report interval.</summary>
    public required EstimateOutcome<LatencyDifference> Mean { get; init; }

    /// <summary>
    /// The standard deviation of D within a session; <see cref="AtMost{T}"/> where the condition varies no more than the reference
    /// would without its slot wait.
    /// </summary>
    public required EstimateOutcome<LatencyDifference> StandardDeviation { get; init; }

    /// <summary>The density of D; null where <see cref="Refusal"/> says why.</summary>
    public required DeviceOnlyDensity? Density { get; init; }

    /// <summary>Why there is no density; null where there is one.</summary>
    public required DeviceOnlyRefusal? Refusal { get; init; }

    /// <summary>The reference's report interval T, which was taken out; null where there is no reference.</summary>
    public required ReferenceSlot? ReferenceSlot { get; init; }

    /// <summary>The sittings whose sessions standard deviation and density were made from.</summary>
    public required IReadOnlyList<string> Sittings { get; init; }
}
