using System.Text.Json;
using Tarry.Findings.ReportIntervals;
using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.Json;

/// <summary>Writes the report interval of a condition.</summary>
internal static class ReportIntervalJson
{
    // Report intervals are known to less than a part per million, and 1 ms to the nanosecond would be no better than that.
    private const int Decimals = 9;

    public static void WriteReportInterval(this Utf8JsonWriter json, ReportIntervalFinding? finding)
    {
        if (finding is null)
        {
            json.WriteNull("report_interval_ms");
            return;
        }

        json.WriteStartObject("report_interval_ms");
        if (finding.Interval is { } interval)
        {
            json.WriteNumber("value", Math.Round(interval.Value.Milliseconds, Decimals));
            json.WriteNumber("low", Math.Round(interval.Interval.Low.Milliseconds, Decimals));
            json.WriteNumber("high", Math.Round(interval.Interval.High.Milliseconds, Decimals));
            json.WriteNumber("level", interval.Level);
            json.WriteString("method", interval.Method);
            json.WriteNumber("trials", interval.Trials);
            json.WriteNumber("sessions", interval.Sessions);
            json.WriteString("evidence", ReportIntervalWording.Evidence(finding));
            if (finding.Evidence is { } numbers)
            {
                Write(json, numbers);
            }
        }
        else if (finding.Unidentified is { } not)
        {
            json.WriteStartObject("not_identifiable");
            json.WriteNumberOrNull("upper_ms", not.AtMost?.Milliseconds);
            json.WriteString("kind", Hyphenated.Name(not.Reason.ToString()));
            json.WriteString("reason", ReportIntervalWording.Reason(not));
            json.WriteString("remedy", ReportIntervalWording.Remedy(not));
            json.WriteStartArray("choices_ms");
            foreach (var choice in not.Choices)
            {
                json.WriteNumberValue(Math.Round(choice.Milliseconds, 6));
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteStartObject("clock");
        json.WriteNumberOrNull("half_width_ppm", finding.Clock.HalfWidthPpm);
        json.WriteString("basis", finding.Clock.Basis);
        json.WriteEndObject();
        json.WriteNumberOrNull("frame_interval_ms", finding.FrameInterval?.Milliseconds);
        if (finding.FixedDelay is { } delay)
        {
            json.WriteEstimate("fixed_delay_ms", delay, latency => latency.Milliseconds);
        }

        if (finding.FixedDelays.Count > 0)
        {
            WriteDelays(json, finding.FixedDelays);
        }

        json.WriteNumberOrNull("shape_block_width_ms", finding.ShapeBlockWidth?.Milliseconds);
        json.WriteString("agreement", Hyphenated.Name(finding.Agreement.ToString()));
        if (finding.ChainLines.Count > 0)
        {
            WriteChain(json, finding.ChainLines);
        }

        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, SlotGridEvidence evidence)
    {
        json.WriteStartObject("evidence_numbers");
        json.WriteNumberOrNull("line_to_threshold", evidence.LineToThreshold);
        json.WriteNumberOrNull("explained_share", evidence.ExplainedShare);
        json.WriteNumberOrNull("lead_over_no_grid_nats", evidence.LeadOverNoGridNats);
        json.WriteNumberOrNull("lead_over_rival_nats", evidence.LeadOverRivalNats);
        json.WriteEndObject();
    }

    private static void WriteDelays(Utf8JsonWriter json, IReadOnlyList<SessionFixedDelay> delays)
    {
        json.WriteStartArray("fixed_delays");
        foreach (var delay in delays)
        {
            json.WriteStartObject();
            json.WriteString("sitting", delay.Sitting);
            if (delay.Outcome is FixedDelayFound found)
            {
                json.WriteMilliseconds("delay_ms", found.DelayMs);
                json.WriteMilliseconds("standard_error_ms", found.StandardErrorMs);
            }
            else if (delay.Outcome is FixedDelayRefused refused)
            {
                json.WriteStartObject("not_identifiable");
                json.WriteString("kind", Hyphenated.Name(refused.Reason.ToString()));
                json.WriteString("reason", FixedDelayWording.Reason(refused));
                json.WriteString("remedy", FixedDelayWording.Remedy(refused));
                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteChain(Utf8JsonWriter json, IReadOnlyList<ChainGrid> sittings)
    {
        json.WriteStartArray("chain");
        foreach (var sitting in sittings)
        {
            json.WriteStartObject();
            json.WriteString("sitting", sitting.Sitting);
            json.WriteNumberOrNull("frame_interval_ms", sitting.FrameIntervalMs);
            json.WriteStartArray("lines");
            foreach (var line in sitting.Lines)
            {
                json.WriteStartObject();
                json.WriteNumberOrNull("frequency_hz", line.FrequencyHz);
                json.WriteNumberOrNull("power_to_threshold", line.PowerToThreshold);
                json.WriteString("owner", Hyphenated.Name(line.Owner.ToString()));
                json.WriteNumber("frame_multiple", line.FrameMultiple);
                json.WriteNumber("slot_multiple", line.SlotMultiple);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
