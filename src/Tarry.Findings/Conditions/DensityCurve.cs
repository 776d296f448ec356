namespace Tarry.Findings.Conditions;

/// <summary>A density of latencies on an even grid, for figures.</summary>
/// <param name="FromMs">Latency of the first point, in milliseconds.</param>
/// <param name="StepMs">Distance between points, in milliseconds.</param>
/// <param name="PerMs">Share of trials per millisecond at each point; integrates to 1.</param>
/// <param name="BandwidthMs">The kernel's standard deviation, in milliseconds.</param>
public sealed record DensityCurve(double FromMs, double StepMs, IReadOnlyList<double> PerMs, double BandwidthMs);
