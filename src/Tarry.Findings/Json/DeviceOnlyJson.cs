using System.Text.Json;
using Tarry.Findings.DeviceOnly;
using Tarry.Metrology;

namespace Tarry.Findings.Json;

/// <summary>The device alone as JSON.</summary>
internal static class DeviceOnlyJson
{
    /// <summary>Writes the property <c>device_only</c>; null for the reference itself.</summary>
    public static void WriteDeviceOnly(this Utf8JsonWriter json, DeviceOnlyFinding? finding)
    {
        if (finding is null)
        {
            json.WriteNull("device_only");
            return;
        }

        json.WriteStartObject("device_only");
        json.WriteEstimate("mean_ms", finding.Mean, Milliseconds);
        json.WriteEstimate("sd_ms", finding.StandardDeviation, Milliseconds);
        Write(json, finding.Density);
        if (finding.Density is { } density)
        {
            json.WriteNumber("iterations", density.Iterations);
        }
        else
        {
            json.WriteNull("iterations");
        }

        Write(json, finding.Refusal);
        json.WriteNumberOrNull("reference_interval_ms", finding.ReferenceSlot?.IntervalMs);
        json.WriteString("reference_interval_source", finding.ReferenceSlot is { } slot ? DeviceOnlyWording.Key(slot.Source) : null);
        Write(json, "sittings", finding.Sittings);
        Write(json, "assumptions", DeviceOnlyWording.Assumptions(finding));
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, DeviceOnlyDensity? density)
    {
        if (density is null)
        {
            json.WriteNull("density");
            return;
        }

        json.WriteStartObject("density");
        json.WriteMilliseconds("from_ms", density.FromMs);
        json.WriteMilliseconds("step_ms", density.StepMs);
        json.WriteNumbers("density_per_ms", density.PerMs);
        json.WriteNumbers("low", density.LowPerMs);
        json.WriteNumbers("high", density.HighPerMs);
        json.WriteNumber("level", density.Level);
        json.WriteString("band", DeviceOnlyWording.Band);
        json.WriteNumberOrNull("beyond_share", density.BeyondShare);
        json.WriteNumber("trials", density.Trials);
        json.WriteNumber("reference_trials", density.ReferenceTrials);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, DeviceOnlyRefusal? refusal)
    {
        if (refusal is null)
        {
            json.WriteNull("refusal");
            return;
        }

        json.WriteStartObject("refusal");
        json.WriteString("kind", DeviceOnlyWording.Key(refusal.Kind));
        foreach (var (name, value) in refusal.Numbers)
        {
            json.WriteNumberOrNull(name, value);
        }

        json.WriteString("sentence", DeviceOnlyWording.Sentence(refusal));
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, string name, IReadOnlyList<string> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
        {
            json.WriteStringValue(value);
        }

        json.WriteEndArray();
    }

    private static double Milliseconds(LatencyDifference difference) => difference.Milliseconds;
}
