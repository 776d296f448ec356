namespace Tarry.Findings.Plans;

/// <summary>How many sittings and presses a study needs, and what each way costs.</summary>
public sealed record StudyPlan
{
    /// <summary>The study's title.</summary>
    public required string Title { get; init; }

    /// <summary>The reference condition's id, or null where the study names none.</summary>
    public required string? Reference { get; init; }

    /// <summary>The conditions, the reference among them, in the study file's order.</summary>
    public required IReadOnlyList<string> Conditions { get; init; }

    /// <summary>What is to be reached.</summary>
    public required PlanGoal Goal { get; init; }

    /// <summary>What scatter is reckoned with.</summary>
    public required PlanVariances Variances { get; init; }

    /// <summary>What bench time costs.</summary>
    public required PlanCosts Costs { get; init; }

    /// <summary>Trials a session that use bench time best, sqrt(c_session/c_press) s_w/s_b; null where sessions do not scatter: then the longer the better.</summary>
    public required int? EconomicTrialsPerSession { get; init; }

    /// <summary>Two sittings and more, as far as they are worth looking at.</summary>
    public required IReadOnlyList<PlanAlternative> Alternatives { get; init; }

    /// <summary>The alternative of least bench time; null where no alternative reaches the goal.</summary>
    public required PlanAlternative? Advised { get; init; }

    /// <summary>Sittings that the study has already.</summary>
    public required IReadOnlyList<string> SittingsDone { get; init; }
}
