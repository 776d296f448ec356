using Tarry.Findings.Conditions;

namespace Tarry.Findings.Quality;

/// <summary>Which devices were measured on one specimen only.</summary>
internal static class UnitCautions
{
    public static IEnumerable<Caution> Of(IReadOnlyList<ConditionFinding> conditions)
    {
        var devices = conditions.Where(condition => !condition.IsReference)
            .GroupBy(condition => condition.Factors.GetValueOrDefault("device", condition.Id), StringComparer.Ordinal)
            .Select(device => (
                Name: device.Key,
                Units: device.Select(condition => condition.Factors.GetValueOrDefault("unit", "")).Distinct(StringComparer.Ordinal).Count()))
            .ToList();
        var single = devices.Where(device => device.Units == 1).Select(device => device.Name).ToList();
        return devices.Count > 1 && single.Count == devices.Count
            ? [new Caution(CautionKind.OneUnit, "Every device of this study", new Dictionary<string, double>())]
            : single.Select(name => new Caution(CautionKind.OneUnit, name, new Dictionary<string, double>()));
    }
}
