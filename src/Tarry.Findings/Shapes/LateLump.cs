using Tarry.Metrology;

namespace Tarry.Findings.Shapes;

/// <summary>Responses that are late by a multiple of one interval, as retransmission makes them.</summary>
/// <param name="Multiple">How many intervals late.</param>
/// <param name="Offset">How far behind the main block.</param>
/// <param name="Count">How many responses.</param>
/// <param name="Share">Their share of the responses, with Clopper-Pearson limits.</param>
public sealed record LateLump(int Multiple, LatencyDifference Offset, int Count, Estimate<Proportion> Share);
