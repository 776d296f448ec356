using Tarry.Findings.Sticks.Measures;

namespace Tarry.Findings.Sticks.Faults;

/// <summary>A departure from a faultless stick that is told from chance and from the resolution of the axes.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Measure">The measure that shows it.</param>
/// <param name="Part">Of which part.</param>
/// <param name="AdjustedP">The chance of it in a faultless stick, Holm-adjusted over all such tests of the study.</param>
/// <param name="Allowance">What a faultless stick of this resolution may show, in the measure's unit.</param>
public sealed record StickFault(StickFaultKind Kind, StickMeasure Measure, StickPart Part, double AdjustedP, double Allowance);
