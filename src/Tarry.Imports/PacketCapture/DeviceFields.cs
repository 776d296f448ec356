using System.Globalization;
using Tarry.Imports.HidReports;
using Tarry.Studies.Reports;

namespace Tarry.Imports.PacketCapture;

/// <summary>The endpoints and fields of a captured device, ready for a session: each field with a column name of its own.</summary>
public static class DeviceFields
{
    /// <summary>What the reports of a device are.</summary>
    /// <param name="device">The device.</param>
    /// <param name="given">A report descriptor that the user gives for endpoints of which the capture holds none; null for none.</param>
    /// <param name="notes">Takes what the user should know.</param>
    public static ReportStream Of(CapturedDevice device, byte[]? given, ICollection<string> notes)
    {
        ArgumentNullException.ThrowIfNull(device);
        ArgumentNullException.ThrowIfNull(notes);
        var endpoints = new List<ReportEndpoint>();
        var fields = new List<ReportField>();
        foreach (var captured in device.Endpoints)
        {
            var bytes = captured.Descriptor ?? given;
            var name = $"{device.Id} {Name(captured.Endpoint)}";
            foreach (var note in captured.Notes)
            {
                notes.Add($"{name}: {note}");
            }

            if (bytes is null)
            {
                endpoints.Add(captured.Endpoint);
                notes.Add($"{name}: the capture holds no report descriptor, so its reports are kept as bytes without fields (--report-descriptor FILE gives one)");
                continue;
            }

            var descriptor = HidReportDescriptor.Parse(bytes);
            var idInBytes = captured.Endpoint.Transport != "bluetooth-le" && descriptor.UsesReportIds;
            endpoints.Add(captured.Endpoint with { ReportIdIsFirstByte = idInBytes, ReportDescriptor = Convert.ToHexStringLower(bytes) });
            var only = captured.Endpoint.Transport == "bluetooth-le" && descriptor.UsesReportIds ? captured.Endpoint.ReportId ?? -1 : (int?)null;
            var (made, left) = HidReportFields.Of(descriptor, captured.Endpoint.Number, idInBytes, only);
            fields.AddRange(made.Take(HidReportFields.MostColumns - fields.Count));
            foreach (var problem in descriptor.Problems)
            {
                notes.Add($"{name}: {problem}");
            }

            if (left > 0)
            {
                notes.Add(string.Create(CultureInfo.InvariantCulture, $"{name}: {left} values have no column of their own and are in the bytes of the reports"));
            }
        }

        return new ReportStream { Device = device.Id, ProductId = device.ProductId, Endpoints = endpoints, Fields = Distinct(fields) };
    }

    /// <summary>An endpoint in words.</summary>
    public static string Name(ReportEndpoint endpoint)
    {
        ArgumentNullException.ThrowIfNull(endpoint);
        var what = endpoint.Transport switch { "usb" => "endpoint", "bluetooth" => "channel", _ => "attribute" };
        return string.Create(CultureInfo.InvariantCulture, $"{what} 0x{endpoint.Number:x2}");
    }

    /// <summary>Where two reports have a field of one name, each gets its report's id before it, and its endpoint's number where that is needed.</summary>
    private static List<ReportField> Distinct(List<ReportField> fields)
    {
        var withIds = Renamed(fields, field => field.ReportId is { } id ? string.Create(CultureInfo.InvariantCulture, $"r{id}_{field.Column}") : field.Column);
        var withEndpoints = Renamed(withIds, field => string.Create(CultureInfo.InvariantCulture, $"e{field.Endpoint}_{field.Column}"));
        var seen = new HashSet<string>(ReportColumns.Fixed, StringComparer.Ordinal);
        return [.. withEndpoints.Where(field => seen.Add(field.Column))];
    }

    private static List<ReportField> Renamed(List<ReportField> fields, Func<ReportField, string> rename)
    {
        var twice = fields.GroupBy(field => field.Column, StringComparer.Ordinal).Where(group => group.Count() > 1).Select(group => group.Key).ToHashSet(StringComparer.Ordinal);
        return [.. fields.Select(field => twice.Contains(field.Column) ? field with { Column = rename(field) } : field)];
    }
}
