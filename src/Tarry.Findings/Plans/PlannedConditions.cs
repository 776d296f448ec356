using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Plans;

/// <summary>Which conditions a study's plan runs in every sitting.</summary>
public static class PlannedConditions
{
    /// <summary>The ids of those that the study file declares, in its order, and of the reference where it is not declared.</summary>
    /// <param name="file">The study file.</param>
    public static IReadOnlyList<string> Of(StudyFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        string[] ids = [.. file.Conditions.Select(condition => condition.Id)];
        return file.Reference is { } reference && !ids.Contains(reference) ? [.. ids, reference] : ids;
    }

    /// <summary>How many conditions a goal takes at least.</summary>
    public static int Needed(PlanGoalKind goal) => goal == PlanGoalKind.HalfWidth ? 1 : 2;
}
