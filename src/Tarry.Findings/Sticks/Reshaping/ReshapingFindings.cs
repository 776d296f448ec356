using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Sticks.Reshaping;

internal static class ReshapingFindings
{
    public static IReadOnlyList<ReshapingFinding> Of(IReadOnlyList<ConditionEntry> conditions, IReadOnlyList<StickCondition> present) => [];
}
