namespace Tarry.Findings.Plans;

/// <summary>The kinds of goal that a plan may have.</summary>
public enum PlanGoalKind
{
    /// <summary>The mean of every condition is known to a half-width.</summary>
    HalfWidth,

    /// <summary>A difference between any two conditions is told.</summary>
    Difference,

    /// <summary>Two conditions that are equal are shown to differ by less than a margin.</summary>
    Equivalence,
}
