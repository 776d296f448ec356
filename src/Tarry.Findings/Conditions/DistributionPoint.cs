namespace Tarry.Findings.Conditions;

/// <summary>One point of a distribution function.</summary>
/// <param name="LatencyMs">A latency, in milliseconds.</param>
/// <param name="Share">The share of presses answered by then, from 0 to 1.</param>
public readonly record struct DistributionPoint(double LatencyMs, double Share);
