namespace Tarry.Findings.Plans;

/// <summary>What a plan is to reach.</summary>
/// <param name="Kind">Which of the three.</param>
/// <param name="Ms">The half-width, the difference or the margin, in milliseconds.</param>
/// <param name="Assurance">How likely the plan reaches it: the chance that the half-width comes out no wider, or the power.</param>
/// <param name="Level">The confidence level of the interval that is made, or behind the test: for a difference, the share of one of all pairs.</param>
public sealed record PlanGoal(PlanGoalKind Kind, double Ms, double Assurance, double Level);
