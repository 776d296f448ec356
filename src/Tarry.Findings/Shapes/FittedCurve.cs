namespace Tarry.Findings.Shapes;

/// <summary>The density of a fitted shape on an even grid, for figures; sessions brought to their common place.</summary>
/// <param name="FromMs">Latency of the first point, in milliseconds.</param>
/// <param name="StepMs">Distance between points, in milliseconds.</param>
/// <param name="PerMs">Share of trials per millisecond at each point.</param>
public sealed record FittedCurve(double FromMs, double StepMs, IReadOnlyList<double> PerMs);
