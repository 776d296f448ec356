namespace Tarry.Findings.Sticks.Measures;

/// <summary>One measure of one part of a condition's stick.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="Part">Of which part.</param>
/// <param name="Outcome">The estimate, or why there is none.</param>
public sealed record StickResult(StickMeasure Measure, StickPart Part, StickOutcome Outcome);
