using System.Globalization;
using Tarry.Studies.Reports;

namespace Tarry.Reports.DataPackage;

/// <summary>The columns of a published table of reports.</summary>
internal static class ReportsSchema
{
    public static IReadOnlyList<TableColumn> Of(ReportStream stream) =>
    [
        new("time_us", "number", "When the report came, from the session's beginning, on the clock of whoever recorded it.", "us", Required: true, Minimum: 0),
        new("endpoint", "integer", "Where it came from: number of one of report_stream.endpoints in the session's record.", Required: true),
        new("report_id", "integer", "Its report id; empty where the reports have none, or it is not known."),
        new("data", "string", "Its bytes in hexadecimal."),
        .. stream.Fields.Select(field => new TableColumn(field.Column, "integer", Field(field))),
    ];

    private static string Field(ReportField field)
    {
        var usage = field.Usages is [var first, ..] ? string.Create(CultureInfo.InvariantCulture, $"usage page 0x{first.Page:x2}, usage 0x{first.First:x2}") : "no usage stated";
        var range = string.Create(CultureInfo.InvariantCulture, $"{field.LogicalMinimum} to {field.LogicalMaximum}");
        return field.IsArray
            ? $"Which usage is active in the report's array ({usage} and on); empty where none is, or the report is another one."
            : $"Value of a field of the report: {usage}, logical range {range}; empty outside it where the device has a null state, and where the report is another one.";
    }
}
