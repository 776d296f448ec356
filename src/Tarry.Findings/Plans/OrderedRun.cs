namespace Tarry.Findings.Plans;

/// <summary>One step of a sitting.</summary>
/// <param name="Step">Its place in the sitting, from 1.</param>
/// <param name="Condition">The condition to run.</param>
/// <param name="Seed">The seed of its press intervals, its own.</param>
public sealed record OrderedRun(int Step, string Condition, uint Seed);
