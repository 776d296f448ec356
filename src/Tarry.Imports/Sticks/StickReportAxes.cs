using Tarry.Studies.Reports;
using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Imports.Sticks;

/// <summary>Where in a device's reports a stick's axes are, and what they can say. See <c>docs/formats/stick.md</c>.</summary>
/// <param name="X">The field of x.</param>
/// <param name="Y">The field of y.</param>
/// <param name="RangeX">The range of x.</param>
/// <param name="RangeY">The range of y, as the device has it.</param>
public sealed record StickReportAxes(ReportField X, ReportField Y, StickRange RangeX, StickRange RangeY)
{
    // HID Usage Tables, Generic Desktop page.
    private const int GenericDesktop = 1;
    private const int UsageOfX = 0x30;
    private const int UsageOfY = 0x31;

    /// <summary>Finds them.</summary>
    /// <param name="stream">The device's reports.</param>
    /// <param name="options">What the user says of them.</param>
    /// <param name="fileName">Where they are from, for a refusal.</param>
    /// <exception cref="ImportException">There is no such field, the two are not in one report, or a range is not known.</exception>
    public static StickReportAxes Of(ReportStream stream, StickReportOptions options, string fileName)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(options);
        var x = Axis(stream, options.XField, UsageOfX, "x", fileName);
        var y = Axis(stream, options.YField, UsageOfY, "y", fileName);
        return (x.Endpoint, x.ReportId) == (y.Endpoint, y.ReportId)
            ? new StickReportAxes(x, y, options.X ?? Range(x, "--x-range", fileName), options.Y ?? Range(y, "--y-range", fileName))
            : throw new ImportException($"{x.Column} and {y.Column} are not in the same report.", fileName, "Name two fields of one report with --x-field and --y-field.");
    }

    /// <summary>The counts that a report of theirs tells; null where it has no value of one, or one outside its range.</summary>
    /// <param name="report">Its bytes.</param>
    public (long X, long Y)? CountsIn(ReadOnlySpan<byte> report) =>
        X.ValueIn(report) is { } x && Holds(RangeX, x) && Y.ValueIn(report) is { } y && Holds(RangeY, y) ? (x, y) : null;

    private static bool Holds(StickRange range, long value) => value >= range.Minimum && value <= range.Maximum;

    private static ReportField Axis(ReportStream stream, string? name, int usage, string what, string fileName)
    {
        bool IsMeant(ReportField field) => name is not null ? field.Column == name : !field.IsArray && field.Usages is [{ Page: GenericDesktop } sole] && sole.First == usage;
        return stream.Fields.Where(field => !field.IsRelative).FirstOrDefault(IsMeant) ?? throw new ImportException(
            name is null ? $"The reports of {stream.Device} have no absolute axis {what}." : $"The reports of {stream.Device} have no absolute field {name}.",
            fileName,
            stream.Fields.Count == 0
                ? "Their report descriptor is not known: give it with --report-descriptor."
                : $"Name one with --{what}-field: {string.Join(", ", stream.Fields.Where(field => !field.IsRelative).Take(40).Select(field => field.Column))}.");
    }

    /// <summary>A recording of events holds 32 bits of any axis, which is no range of a stick.</summary>
    private static StickRange Range(ReportField field, string option, string fileName) =>
        field is { LogicalMinimum: int.MinValue, LogicalMaximum: int.MaxValue }
            ? throw new ImportException($"The range of {field.Column} is not known.", fileName, $"Give {option} MIN..MAX, as 'tarry host devices' shows it.")
            : new StickRange(field.LogicalMinimum, field.LogicalMaximum, 1);
}
