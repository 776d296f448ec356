using Tarry.Studies.StudyFiles;

namespace Tarry.Reports.DataPackage;

/// <summary>The columns that say what a condition is, at the end of a published table.</summary>
internal static class FactorSchema
{
    private static readonly Dictionary<string, string> UsualFactors = new()
    {
        ["device"] = "Maker and model of the device.",
        ["unit"] = "Which specimen of the device.",
        ["device_firmware"] = "The device's firmware.",
        ["link"] = "How the device is linked to the host.",
        ["layer"] = "Software layer between host and application.",
        ["control"] = "The control that was actuated.",
        ["placement"] = "How far from the host and where.",
    };

    /// <summary>The columns of such names.</summary>
    /// <param name="names">Their names, in order.</param>
    /// <param name="study">The study file: whether it states report rates.</param>
    public static IEnumerable<TableColumn> Of(IEnumerable<string> names, StudyFile study)
    {
        var rates = study.Conditions.Any(condition => condition.NominalReportHz is not null);
        return names.Select(name => rates && name == "nominal_report_hz"
            ? new TableColumn(name, "number", "Reports a second that the maker states.", "Hz", Minimum: 0)
            : new TableColumn(name, "string", UsualFactors.GetValueOrDefault(name, "A factor of the condition, declared by the tester.")));
    }
}
