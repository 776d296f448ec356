namespace Tarry.Findings.Conditions;

/// <summary>The latencies of one session in the order of its trials, thinned for a figure.</summary>
/// <param name="Batches">Quantiles of contiguous batches of trials, all of about one size.</param>
/// <param name="Late">Responses beyond the condition's late threshold, the latest of them where there are too many to draw.</param>
/// <param name="LateCount">How many there are in all.</param>
public sealed record RunChart(IReadOnlyList<RunChartBatch> Batches, IReadOnlyList<RunChartPoint> Late, int LateCount);
