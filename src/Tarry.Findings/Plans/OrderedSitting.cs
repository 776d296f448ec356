namespace Tarry.Findings.Plans;

/// <summary>One sitting: every condition once, in a drawn order.</summary>
/// <param name="Sitting">Its name.</param>
/// <param name="Runs">Its steps.</param>
public sealed record OrderedSitting(string Sitting, IReadOnlyList<OrderedRun> Runs);
