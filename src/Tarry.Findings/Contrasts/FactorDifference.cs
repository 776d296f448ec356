using Tarry.Findings.Conditions;
using static System.FormattableString;

namespace Tarry.Findings.Contrasts;

/// <summary>A factor whose level is not the same in two conditions.</summary>
/// <param name="Factor">The factor.</param>
/// <param name="A">Its level in the first; null if not stated.</param>
/// <param name="B">Its level in the second; null if not stated.</param>
public sealed record FactorDifference(string Factor, string? A, string? B)
{
    private const string NominalRate = "nominal_report_hz";

    /// <summary>Whether both state a level, so that they contradict each other.</summary>
    public bool IsContradiction => A is not null && B is not null;

    internal static IReadOnlyList<FactorDifference> Between(ConditionFinding a, ConditionFinding b)
    {
        var (first, second) = (Levels(a), Levels(b));
        return
        [
            .. first.Keys.Union(second.Keys)
                .Select(factor => new FactorDifference(factor, first.GetValueOrDefault(factor), second.GetValueOrDefault(factor)))
                .Where(difference => difference.A != difference.B),
        ];
    }

    /// <summary>The difference in words: <c>device_firmware 1.8 against 1.7</c>.</summary>
    public override string ToString() => $"{Factor} {A ?? "not stated"} against {B ?? "not stated"}";

    private static Dictionary<string, string> Levels(ConditionFinding condition)
    {
        var levels = condition.Factors.Where(factor => factor.Value.Length > 0).ToDictionary(factor => factor.Key, factor => factor.Value);
        if (condition.NominalReportHz is { } rate)
        {
            levels[NominalRate] = Invariant($"{rate}");
        }

        return levels;
    }
}
