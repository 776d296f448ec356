namespace Tarry.Imports.Orders;

/// <summary>One row of an order of runs.</summary>
/// <param name="Sitting">The sitting.</param>
/// <param name="Step">Its place in the sitting, from 1.</param>
/// <param name="Condition">The condition to run.</param>
/// <param name="Trials">Trials of the session; null where the order does not say.</param>
/// <param name="Seed">The seed of its press intervals; null where the order does not say.</param>
public sealed record OrderedStep(string Sitting, int Step, string Condition, long? Trials, uint? Seed);
