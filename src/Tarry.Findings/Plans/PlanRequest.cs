namespace Tarry.Findings.Plans;

/// <summary>What is asked of a plan.</summary>
public sealed record PlanRequest
{
    /// <summary>What is to be reached.</summary>
    public required PlanGoalKind Kind { get; init; }

    /// <summary>The half-width, the difference or the margin, in milliseconds; the study's margin where null.</summary>
    public double? Ms { get; init; }

    /// <summary>The assurance or the power.</summary>
    public double Assurance { get; init; } = 0.80;

    /// <summary>The standard deviation between sessions, in milliseconds; null to take what is measured.</summary>
    public double? SessionSdMs { get; init; }

    /// <summary>The standard deviation within a session, in milliseconds; null to take what is measured.</summary>
    public double? TrialSdMs { get; init; }

    /// <summary>What bench time costs.</summary>
    public PlanCosts Costs { get; init; } = PlanCosts.Default;
}
