using System.Globalization;
using Tarry.Imports.HidReports;
using Tarry.Studies.Reports;
using static System.FormattableString;

namespace Tarry.Imports.PacketCapture;

/// <summary>What a capture holds, in words: devices, descriptors, fields, and the first reports decoded.</summary>
public static class CaptureDescription
{
    private const int ShownReports = 10;
    private const int ShownDefects = 10;
    private const int ShownFields = 24;

    /// <summary>The lines.</summary>
    /// <param name="file">The capture.</param>
    /// <param name="givenDescriptor">A report descriptor for devices of which the capture holds none; null for none.</param>
    public static IEnumerable<string> Lines(CaptureFile file, byte[]? givenDescriptor = null)
    {
        ArgumentNullException.ThrowIfNull(file);
        var content = file.Content;
        yield return Invariant($"{file.Name}: {file.Format}, {Counted(content.Packets, "packet")}, {Counted(content.Devices.Count, "device")} with reports");
        foreach (var (linkType, packets) in content.PassedOver)
        {
            yield return Invariant($"  {Counted(packets, "packet")} of link type {linkType}: not read");
        }

        foreach (var line in content.Devices.SelectMany(device => Lines(device, givenDescriptor, content.FirstNanoseconds ?? 0)))
        {
            yield return $"  {line}";
        }

        foreach (var defect in content.Defects.First.Take(ShownDefects))
        {
            yield return $"  problem: {defect}";
        }

        if (content.Defects.Total > ShownDefects)
        {
            yield return Invariant($"  and {content.Defects.Total - ShownDefects} more problems");
        }
    }

    private static IEnumerable<string> Lines(CapturedDevice device, byte[]? givenDescriptor, long origin)
    {
        var notes = new List<string>();
        var stream = DeviceFields.Of(device, givenDescriptor, notes);
        yield return Invariant($"{device.Id}{(device.ProductId is { } id ? $" (product {id})" : "")}: {Counted(device.Reports, "report")}");
        foreach (var endpoint in stream.Endpoints)
        {
            yield return $"  {DeviceFields.Name(endpoint)}: {Polling(endpoint)}";
            foreach (var line in endpoint.ReportDescriptor is { } hex ? HidDescriptorText.Lines(HidReportDescriptor.Parse(Convert.FromHexString(hex))) : [])
            {
                yield return $"    {line}";
            }
        }

        foreach (var note in notes)
        {
            yield return $"  note: {note}";
        }

        var shown = 0;
        for (var index = 0; index < device.Log.Count && shown < ShownReports; index++)
        {
            if (stream.Endpoints.Any(endpoint => endpoint.Number == device.Log.Endpoint(index)))
            {
                shown++;
                yield return $"  {Report(stream, device.Log, index, origin)}";
            }
        }
    }

    private static string Counted(long count, string noun) => Invariant($"{count} {noun}{(count == 1 ? "" : "s")}");

    private static string Polling(ReportEndpoint endpoint) => endpoint switch
    {
        { DeclaredIntervalUs: { } declared, BInterval: { } interval } => Invariant($"polling interval {declared / 1_000.0:0.###} ms declared (bInterval {interval}, {endpoint.Speed} speed)"),
        { DeclaredIntervalUs: { } declared } => Invariant($"connection interval {declared / 1_000.0:0.###} ms"),
        { BInterval: { } interval } => Invariant($"bInterval {interval}, speed not known"),
        _ => "no polling interval in the capture",
    };

    private static string Report(ReportStream stream, ReportLog log, int index, long origin)
    {
        var data = log.Data(index);
        var endpoint = stream.Endpoints.First(candidate => candidate.Number == log.Endpoint(index));
        var id = endpoint.ReportIdOf(data);
        var values = new List<string>();
        foreach (var field in stream.Fields.Where(field => field.Endpoint == endpoint.Number && field.ReportId == id).Take(ShownFields))
        {
            values.Add($"{field.Column}={field.ValueIn(data)?.ToString(CultureInfo.InvariantCulture) ?? "none"}");
        }

        return string.Create(CultureInfo.InvariantCulture, $"{(log.Tick(index) - origin) / 1_000_000.0:0.000000} ms  0x{endpoint.Number:x2}  {Convert.ToHexStringLower(data)}  {string.Join(' ', values)}").TrimEnd();
    }
}
