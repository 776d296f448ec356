namespace Tarry.Findings.Conditions;

/// <summary>One batch of trials of a session.</summary>
/// <param name="FirstSequence">Sequence number of its first used trial.</param>
/// <param name="LastSequence">Sequence number of its last used trial.</param>
/// <param name="MedianMs">Median of its latencies, in milliseconds.</param>
/// <param name="P05Ms">Their 5 % quantile.</param>
/// <param name="P95Ms">Their 95 % quantile.</param>
public sealed record RunChartBatch(long FirstSequence, long LastSequence, double MedianMs, double P05Ms, double P95Ms);
