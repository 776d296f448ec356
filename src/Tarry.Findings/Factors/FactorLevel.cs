using Tarry.Studies.StudyFiles;
using static System.FormattableString;

namespace Tarry.Findings.Factors;

/// <summary>The levels of a condition's factors, so far as they are stated.</summary>
internal static class FactorLevel
{
    public const string None = "none";
    public const string ReportRate = "nominal_report_hz";
    private const string Layer = "layer";

    /// <summary>Factors that have no meaning across levels of another: the serial number of another device is another one of necessity.</summary>
    private static readonly Dictionary<string, string[]> NestedIn = new()
    {
        ["device"] = ["unit", "device_firmware"],
    };

    /// <summary>Factors that leave the stated report rate as it is; where it differs as well, two things differ.</summary>
    private static readonly HashSet<string> KeepsTheRate = [Layer, "unit", "control", "placement"];

    /// <summary>Whether a level stands for the factor being absent.</summary>
    public static bool IsNone(string level) => level.Equals(None, StringComparison.OrdinalIgnoreCase);

    /// <summary>By factor. An empty level is <see cref="None"/>, and so is a layer that is not stated.</summary>
    public static Dictionary<string, string> Of(ConditionEntry condition)
    {
        var levels = condition.Factors.ToDictionary(
            factor => factor.Key,
            factor => string.IsNullOrWhiteSpace(factor.Value) || IsNone(factor.Value) ? None : factor.Value,
            StringComparer.Ordinal);
        levels.TryAdd(Layer, None);
        return levels;
    }

    /// <summary>The one factor in which two conditions differ; null where there is none, or more than one, or a level that one does not state.</summary>
    public static (string Factor, string A, string B)? OnlyDifference(ConditionEntry a, ConditionEntry b)
    {
        var (first, second) = (Of(a), Of(b));
        var differing = first.Keys.Union(second.Keys)
            .Where(factor => first.GetValueOrDefault(factor) != second.GetValueOrDefault(factor))
            .ToList();
        var nested = differing.SelectMany(factor => NestedIn.GetValueOrDefault(factor, [])).ToList();
        differing.RemoveAll(nested.Contains);
        var sameRate = a.NominalReportHz == b.NominalReportHz;
        return differing switch
        {
            [] when !sameRate && a.NominalReportHz is { } rateOfA && b.NominalReportHz is { } rateOfB => (ReportRate, Invariant($"{rateOfA}"), Invariant($"{rateOfB}")),
            [var factor] when (sameRate || !KeepsTheRate.Contains(factor)) && first.TryGetValue(factor, out var levelOfA) && second.TryGetValue(factor, out var levelOfB) => (factor, levelOfA, levelOfB),
            _ => null,
        };
    }

    /// <summary>The levels that two conditions share.</summary>
    public static IReadOnlyDictionary<string, string> Shared(ConditionEntry a, ConditionEntry b)
    {
        var second = Of(b);
        return Of(a)
            .Where(factor => second.GetValueOrDefault(factor.Key) == factor.Value)
            .ToDictionary(factor => factor.Key, factor => factor.Value, StringComparer.Ordinal);
    }
}
