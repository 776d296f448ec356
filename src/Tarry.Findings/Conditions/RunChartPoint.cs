namespace Tarry.Findings.Conditions;

/// <summary>One trial.</summary>
/// <param name="Sequence">Its sequence number.</param>
/// <param name="LatencyMs">Its latency, in milliseconds.</param>
public sealed record RunChartPoint(long Sequence, double LatencyMs);
