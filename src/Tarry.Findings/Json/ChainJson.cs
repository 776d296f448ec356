using System.Text.Json;
using Tarry.Findings.Conditions;

namespace Tarry.Findings.Json;

/// <summary>The chain of a condition as JSON.</summary>
internal static class ChainJson
{
    /// <summary>Writes the property <c>chain</c>.</summary>
    public static void Write(Utf8JsonWriter json, ChainFinding chain)
    {
        json.WriteStartObject("chain");
        Write(json, "rig_boards", chain.Boards);
        Write(json, "rig_firmware", chain.RigFirmware);
        Write(json, "responses", chain.Responses);
        Write(json, "hosts", chain.Hosts);
        Write(json, "applications", chain.Applications);
        Write(json, "frame_caps_hz", chain.FrameCapsHz);
        Write(json, "refresh_rates_hz", chain.RefreshRatesHz);
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

    private static void Write(Utf8JsonWriter json, string name, IReadOnlyList<double> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
        {
            json.WriteNumberValue(value);
        }

        json.WriteEndArray();
    }
}
