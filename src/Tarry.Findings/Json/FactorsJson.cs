using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Factors;

namespace Tarry.Findings.Json;

/// <summary>What factors do, as JSON.</summary>
public static class FactorsJson
{
    /// <summary>Writes the property <c>factors</c>; nothing where the document has none.</summary>
    internal static void Write(Utf8JsonWriter json, IReadOnlyList<FactorFinding>? factors)
    {
        if (factors is null)
        {
            return;
        }

        json.WriteStartArray("factors");
        foreach (var factor in factors)
        {
            Write(json, factor);
        }

        json.WriteEndArray();
    }

    /// <summary>One factor alone, as it stands in the findings: indented, with line feeds, ending in one.</summary>
    public static string Write(FactorFinding factor)
    {
        ArgumentNullException.ThrowIfNull(factor);
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions
        {
            Indented = true,
            NewLine = "\n",
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }))
        {
            Write(json, factor);
        }

        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    private static void Write(Utf8JsonWriter json, FactorFinding factor)
    {
        json.WriteStartObject();
        json.WriteString("factor", factor.Factor);
        json.WriteStartObject("family");
        json.WriteNumber("tests", factor.Tests);
        json.WriteNumber("families", factor.Families);
        json.WriteEndObject();
        json.WriteStartArray("costs");
        foreach (var cost in factor.Costs)
        {
            Write(json, cost);
        }

        json.WriteEndArray();
        json.WriteStartArray("contrasts");
        foreach (var contrast in factor.Contrasts)
        {
            Write(json, contrast);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, LevelCost cost)
    {
        json.WriteStartObject();
        json.WriteString("level", cost.Level);
        json.WriteString("baseline", cost.Baseline);
        json.WriteEstimate("cost_ms", cost.Cost, difference => difference.Milliseconds);
        json.WriteProbabilityOrNull("p_adjusted", cost.AdjustedP);
        json.WriteMilliseconds("margin_ms", cost.MarginMs);
        json.WriteString("verdict", cost.Verdict is { } verdict ? VerdictWording.Key(verdict) : null);
        json.WriteNumberOrNull("minimum_detectable_ms", cost.MinimumDetectable?.Milliseconds);
        FindingsJson.WriteNeeded(json, cost.Needed);
        json.WriteNumberOrNull("standard_error_ms", cost.StandardErrorMs);
        json.WriteNumberOrNull("degrees_of_freedom", cost.DegreesOfFreedom);
        if (cost.Agreement is { } agreement)
        {
            json.WriteStartObject("agreement");
            json.WriteNumber("settings", agreement.Settings);
            json.WriteNumberOrNull("f", double.IsFinite(agreement.F) ? agreement.F : null);
            json.WriteProbabilityOrNull("p", agreement.P);
            json.WriteMilliseconds("least_ms", agreement.Least.Milliseconds);
            json.WriteMilliseconds("greatest_ms", agreement.Greatest.Milliseconds);
            json.WriteBoolean("differ", agreement.Differ);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("agreement");
        }

        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, FactorContrast contrast)
    {
        json.WriteStartObject();
        json.WriteString("level", contrast.Level);
        json.WriteString("baseline", contrast.Baseline);
        json.WriteStartObject("shared");
        foreach (var (factor, level) in contrast.Shared)
        {
            json.WriteString(factor, level);
        }

        json.WriteEndObject();
        json.WriteString("a", contrast.Comparison.A);
        json.WriteString("b", contrast.Comparison.B);
        FindingsJson.WriteResult(json, contrast.Comparison);
        json.WriteEndObject();
    }
}
