namespace Tarry.Findings.Budgets;

/// <summary>What one source adds to the uncertainty of one result.</summary>
/// <param name="Source">Which.</param>
/// <param name="Sensitivity">How far the result moves for one unit of the input, in milliseconds; null where two sides were combined.</param>
/// <param name="Milliseconds">The contribution to the combined standard uncertainty, not negative.</param>
/// <param name="DegreesOfFreedom">How well it is known; may be infinite.</param>
/// <param name="Cancels">Whether it is common to both sides of a difference and drops out of it.</param>
public sealed record BudgetContribution(UncertaintySource Source, double? Sensitivity, double Milliseconds, double DegreesOfFreedom, bool Cancels);
