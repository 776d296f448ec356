namespace Tarry.Findings.Plans;

/// <summary>One way to reach the goal: so many sittings with so many trials in each session.</summary>
/// <param name="Sittings">Sittings, each with every condition.</param>
/// <param name="TrialsPerSession">Trials in each session; null where more presses cannot help.</param>
/// <param name="Presses">Presses in all; null likewise.</param>
/// <param name="Hours">Bench time in hours; null likewise.</param>
/// <param name="EndlessPressesMs">What endless presses in so many sittings would reach: the half-width that is assured, or the difference or margin that has the power.</param>
public sealed record PlanAlternative(int Sittings, int? TrialsPerSession, long? Presses, double? Hours, double EndlessPressesMs);
