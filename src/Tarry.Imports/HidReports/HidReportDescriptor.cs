namespace Tarry.Imports.HidReports;

/// <summary>A HID report descriptor, read: its collections, its fields, and what is wrong with it.</summary>
/// <remarks>USB Device Class Definition for Human Interface Devices 1.11, 6.2.2 (the report descriptor) and 8 (reports).</remarks>
public sealed record HidReportDescriptor
{
    /// <summary>The longest descriptor that is read, in bytes: what a HID descriptor can state.</summary>
    public const int LongestDescriptor = 65_535;

    /// <summary>The descriptor as a whole; what it holds is the tree.</summary>
    public required HidCollection Root { get; init; }

    /// <summary>All fields, padding too, in order.</summary>
    public required IReadOnlyList<HidField> Fields { get; init; }

    /// <summary>Whether its reports begin with an id.</summary>
    public required bool UsesReportIds { get; init; }

    /// <summary>What is wrong, in order of place. The rest is read.</summary>
    public required IReadOnlyList<HidProblem> Problems { get; init; }

    /// <summary>Reads a descriptor; whatever its bytes, this returns.</summary>
    /// <param name="descriptor">Its bytes; those beyond <see cref="LongestDescriptor"/> are left aside.</param>
    public static HidReportDescriptor Parse(ReadOnlySpan<byte> descriptor) =>
        new HidDescriptorParser().Parse(descriptor[..Math.Min(descriptor.Length, LongestDescriptor)]);

    /// <summary>The length of a report in bits, its id not counted; 0 where there is no such report.</summary>
    public int BitsOf(HidReportKind kind, int? reportId) =>
        Fields.Where(field => field.Kind == kind && field.ReportId == reportId).Select(field => field.BitOffset + (field.BitSize * field.Count)).DefaultIfEmpty().Max();
}
