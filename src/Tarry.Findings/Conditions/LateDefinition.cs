using Tarry.Metrology;

namespace Tarry.Findings.Conditions;

/// <summary>From where a response counts as late.</summary>
/// <param name="Threshold">Later than this is late.</param>
/// <param name="Definition">How it was set, in words.</param>
public sealed record LateDefinition(Latency Threshold, string Definition);
