using Tarry.Metrology;

namespace Tarry.Findings.Budgets;

/// <summary>A latency against the second, not against another: corrected for the rig's own delays, with its combined interval.</summary>
/// <param name="Value">The estimate, corrected.</param>
/// <param name="Interval">Value +- the expanded uncertainty.</param>
/// <param name="Stated">The uncertainty and what it is made of.</param>
public sealed record AbsoluteLatency(Latency Value, Interval<Latency> Interval, StatedUncertainty Stated)
{
    internal static AbsoluteLatency Of(double estimateMs, StatedUncertainty stated)
    {
        var value = estimateMs + stated.Correction.Milliseconds;
        var half = stated.Uncertainty.Expanded;
        return new AbsoluteLatency(
            Latency.FromMilliseconds(value),
            new(Latency.FromMilliseconds(value - half), Latency.FromMilliseconds(value + half)),
            stated);
    }
}
