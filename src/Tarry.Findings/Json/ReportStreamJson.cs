using System.Text.Json;
using Tarry.Findings.ReportStreams;

namespace Tarry.Findings.Json;

/// <summary>Report streams as JSON; a study without any has no such key.</summary>
internal static class ReportStreamJson
{
    public static void WriteReportStreams(this Utf8JsonWriter json, IReadOnlyList<ReportStreamFinding>? streams)
    {
        if (streams is null or [])
        {
            return;
        }

        json.WriteStartArray("report_streams");
        foreach (var stream in streams)
        {
            json.WriteStartObject();
            json.WriteString("session", stream.Session.ToString());
            json.WriteString("device", stream.Device);
            json.WriteNumber("endpoint", stream.Endpoint.Number);
            json.WriteString("transport", stream.Endpoint.Transport);
            json.WriteNumber("reports", stream.Reports);
            json.WriteNumberOrNull("declared_interval_ms", stream.Declared?.Milliseconds);
            json.WriteNumberOrNull("b_interval", stream.Endpoint.BInterval);
            json.WriteString("usb_speed", stream.Endpoint.Speed);
            json.WriteEstimate("interval_ms", stream.Interval, latency => latency.Milliseconds);
            json.WriteNumberOrNull("observed_over_declared", stream.ObservedOverDeclared);
            Write(json, stream);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, ReportStreamFinding stream)
    {
        if (stream is not { Slots: { } slots, Histogram: { } histogram })
        {
            json.WriteNull("slots");
            json.WriteNull("histogram");
            return;
        }

        json.WriteStartObject("slots");
        json.WriteNumber("filled", slots.Filled);
        json.WriteNumber("missed", slots.Missed);
        json.WriteNumber("pauses", slots.Pauses);
        json.WriteNumber("doubled", slots.Doubled);
        json.WriteNumberOrNull("jitter_sd_ms", slots.JitterMs);
        json.WriteEndObject();
        json.WriteStartObject("histogram");
        json.WriteMilliseconds("from_ms", histogram.From);
        json.WriteMilliseconds("bin_width_ms", histogram.BinWidth);
        json.WriteStartArray("counts");
        foreach (var count in histogram.Counts)
        {
            json.WriteNumberValue(count);
        }

        json.WriteEndArray();
        json.WriteNumber("above", histogram.Above);
        json.WriteEndObject();
    }
}
