using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Plans;

/// <summary>Which conditions a study's plan runs in every sitting.</summary>
public static class PlannedConditions
{
    /// <summary>
    /// The ids of those that the study file declares, in its order, and of the reference where it is not declared. A condition of which
    /// the study has positions of a stick and no latencies is not pressed, and not among them.
    /// </summary>
    /// <param name="file">The study file.</param>
    /// <param name="findings">The study's findings.</param>
    public static IReadOnlyList<string> Of(StudyFile file, FindingsDocument findings)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(findings);
        var onlySticks = (findings.Sticks?.Conditions.Select(stick => stick.Id) ?? []).Except(findings.Conditions.Select(condition => condition.Id)).ToHashSet();
        string[] ids = [.. file.Conditions.Select(condition => condition.Id).Where(id => !onlySticks.Contains(id))];
        return file.Reference is { } reference && !ids.Contains(reference) ? [.. ids, reference] : ids;
    }

    /// <summary>How many conditions a goal takes at least.</summary>
    public static int Needed(PlanGoalKind goal) => goal == PlanGoalKind.HalfWidth ? 1 : 2;
}
