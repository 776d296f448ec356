using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Tarry.Findings.Contrasts;

namespace Tarry.Findings.Json;

/// <summary>A contrast as JSON, by <c>docs/comparison.schema.json</c>: the same contrast gives the same bytes.</summary>
public static class ContrastJson
{
    /// <summary>The contrast as indented JSON with line feeds, ending in one.</summary>
    public static string Write(ContrastFinding contrast)
    {
        ArgumentNullException.ThrowIfNull(contrast);
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions
        {
            Indented = true,
            NewLine = "\n",
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }))
        {
            json.WriteStartObject();
            Write(json, "a", contrast.A);
            Write(json, "b", contrast.B);
            FindingsJson.WriteResult(json, contrast.Comparison);
            json.WriteStartArray("factors_that_differ");
            foreach (var difference in contrast.FactorDifferences)
            {
                json.WriteStartObject();
                json.WriteString("factor", difference.Factor);
                json.WriteString("a", difference.A);
                json.WriteString("b", difference.B);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            if (contrast.ReferenceChange is { } change)
            {
                json.WriteEstimate("reference_change_ms", change, difference => difference.Milliseconds);
            }
            else
            {
                json.WriteNull("reference_change_ms");
            }

            FindingsJson.Write(json, contrast.Cautions);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    private static void Write(Utf8JsonWriter json, string name, ContrastSide side)
    {
        json.WriteStartObject(name);
        json.WriteString("study", side.StudyTitle);
        json.WriteString("condition", side.Condition);
        json.WriteString("reference", side.Reference);
        json.WriteNumber("sessions", side.Sessions);
        json.WriteEndObject();
    }
}
