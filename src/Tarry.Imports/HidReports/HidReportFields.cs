using System.Globalization;
using Tarry.Studies.Reports;

namespace Tarry.Imports.HidReports;

/// <summary>The values of input reports one by one, each with a name of its own: from a descriptor to columns.</summary>
public static class HidReportFields
{
    /// <summary>The most columns that are made; fields beyond stay in the bytes of the reports.</summary>
    public const int MostColumns = 512;

    private const int MostBits = 32;

    /// <summary>The fields of one endpoint's input reports; padding and values of more than 32 bits are left in the bytes.</summary>
    /// <param name="descriptor">The report descriptor.</param>
    /// <param name="endpoint">The endpoint that the reports come from.</param>
    /// <param name="idInBytes">Whether the report's id is its first byte, so that fields begin behind it.</param>
    /// <param name="onlyReportId">The one report that comes from there; null for all.</param>
    /// <returns>The fields, and how many values there were no columns for.</returns>
    public static (IReadOnlyList<ReportField> Fields, int LeftInBytes) Of(
        HidReportDescriptor descriptor, int endpoint, bool idInBytes, int? onlyReportId = null)
    {
        ArgumentNullException.ThrowIfNull(descriptor);
        var fields = new List<ReportField>();
        var names = new Dictionary<(int? ReportId, string Name), int>();
        var left = 0;
        foreach (var field in descriptor.Fields.Where(field => field is { Kind: HidReportKind.Input, IsConstant: false, Usages.Count: > 0 }))
        {
            if (onlyReportId is not null && field.ReportId != onlyReportId)
            {
                continue;
            }

            var usable = field.BitSize <= MostBits ? Math.Min(field.Count, MostColumns - fields.Count) : 0;
            left += field.Count - usable;
            for (var index = 0; index < usable; index++)
            {
                fields.Add(Field(field, index, endpoint, idInBytes && field.ReportId is not null ? 8 : 0, names));
            }
        }

        return (fields, left);
    }

    private static ReportField Field(HidField field, int index, int endpoint, int idBits, Dictionary<(int? ReportId, string Name), int> names)
    {
        var usage = field.UsageOf(index)!;
        // An array of one usage that takes many values is a buffer of bytes, as devices of a maker's own write it, and no choice of usages.
        var isArray = !field.IsVariable && (field.Usages is not [{ } sole] || sole.First != sole.Last || field.LogicalMaximum - field.LogicalMinimum < 1);
        return new ReportField
        {
            Column = Unique(isArray ? $"{HidUsageNames.OfPage(usage.Page)}_slot" : HidUsageNames.Of(usage), !isArray, field.ReportId, names),
            Endpoint = endpoint,
            ReportId = field.ReportId,
            BitOffset = idBits + field.BitOffset + (index * field.BitSize),
            BitSize = field.BitSize,
            IsArray = isArray,
            IsRelative = field.IsRelative,
            HasNullState = field.HasNullState,
            LogicalMinimum = field.LogicalMinimum,
            LogicalMaximum = field.LogicalMaximum,
            PhysicalMinimum = field.PhysicalMinimum,
            PhysicalMaximum = field.PhysicalMaximum,
            Unit = field.Unit,
            UnitExponent = field.UnitExponent,
            Usages = isArray ? field.Usages : [usage],
        };
    }

    // The first of a variable's name stands alone; slots of an array are numbered from 1.
    private static string Unique(string name, bool firstAlone, int? reportId, Dictionary<(int? ReportId, string Name), int> names)
    {
        var number = names[(reportId, name)] = names.GetValueOrDefault((reportId, name)) + 1;
        return firstAlone && number == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}_{number}");
    }
}
