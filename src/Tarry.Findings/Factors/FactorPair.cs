using Tarry.Findings.Comparisons;
using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Factors;

/// <summary>A pair of conditions that differ in one factor alone, with what is known of it.</summary>
/// <param name="Factor">The factor.</param>
/// <param name="Level">The level that is judged.</param>
/// <param name="Baseline">The level from which it counts.</param>
/// <param name="Shared">The levels of the other factors.</param>
/// <param name="LevelIsA">Whether the level is the first condition's of the evidence.</param>
/// <param name="Evidence">What is known of the pair.</param>
/// <param name="Comparison">What the study says of it.</param>
internal sealed record FactorPair(
    string Factor,
    string Level,
    string Baseline,
    IReadOnlyDictionary<string, string> Shared,
    bool LevelIsA,
    PairEvidence Evidence,
    ComparisonFinding Comparison)
{
    /// <summary>The other factors in words that are one and the same for the same setting.</summary>
    public string Setting => string.Join('\n', Shared.OrderBy(factor => factor.Key, StringComparer.Ordinal).Select(factor => $"{factor.Key}={factor.Value}"));

    /// <summary>Level less baseline in each sitting.</summary>
    public IReadOnlyDictionary<string, double> Differences => Evidence.Pair.Sittings
        .Zip(Evidence.Pair.Differences)
        .ToDictionary(sitting => sitting.First, sitting => LevelIsA ? sitting.Second : -sitting.Second, StringComparer.Ordinal);

    /// <summary>All of a study.</summary>
    /// <remarks>
    /// The reference stands for the rig, not for a device: it is left out where device or unit is what differs, and takes part where
    /// it is the true counterpart of a condition, which shares its device.
    /// </remarks>
    public static IReadOnlyList<FactorPair> Of(
        IReadOnlyList<ConditionEntry> conditions,
        string? reference,
        IReadOnlyList<PairEvidence> evidence,
        IReadOnlyList<ComparisonFinding> comparisons)
    {
        var byId = conditions.ToDictionary(condition => condition.Id, StringComparer.Ordinal);
        var places = Places(conditions);
        var found = new List<FactorPair>();
        for (var i = 0; i < evidence.Count; i++)
        {
            if (!byId.TryGetValue(comparisons[i].A, out var a) || !byId.TryGetValue(comparisons[i].B, out var b))
            {
                continue;
            }

            if (FactorLevel.OnlyDifference(a, b) is not { } difference
                || (difference.Factor is "device" or "unit" && (a.Id == reference || b.Id == reference)))
            {
                continue;
            }

            var levelIsA = IsBaseline(difference.Factor, difference.B, difference.A, places);
            found.Add(new FactorPair(
                difference.Factor,
                levelIsA ? difference.A : difference.B,
                levelIsA ? difference.B : difference.A,
                FactorLevel.Shared(a, b),
                levelIsA,
                evidence[i],
                levelIsA ? comparisons[i] : comparisons[i].Swapped()));
        }

        return found;
    }

    private static bool IsBaseline(string factor, string level, string other, Dictionary<(string, string), int> places) =>
        FactorLevel.IsNone(level) || (!FactorLevel.IsNone(other) && places.GetValueOrDefault((factor, level)) < places.GetValueOrDefault((factor, other)));

    // Where each level stands first in the study file.
    private static Dictionary<(string Factor, string Level), int> Places(IReadOnlyList<ConditionEntry> conditions)
    {
        var places = new Dictionary<(string, string), int>();
        for (var i = 0; i < conditions.Count; i++)
        {
            foreach (var (factor, level) in FactorLevel.Of(conditions[i]))
            {
                places.TryAdd((factor, level), i);
            }

            if (conditions[i].NominalReportHz is { } rate)
            {
                places.TryAdd((FactorLevel.ReportRate, FormattableString.Invariant($"{rate}")), i);
            }
        }

        return places;
    }
}
