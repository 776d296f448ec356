using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Tarry.Findings.Plans;

namespace Tarry.Findings.Json;

/// <summary>A plan as JSON, by <c>docs/plan.schema.json</c>.</summary>
public static class PlanJson
{
    /// <summary>The plan with the order of its runs as indented JSON with line feeds, ending in one.</summary>
    public static string Write(StudyPlan plan, IReadOnlyList<OrderedSitting> order)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(order);
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            Write(json, plan, order);
        }

        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    private static void Write(Utf8JsonWriter json, StudyPlan plan, IReadOnlyList<OrderedSitting> order)
    {
        json.WriteStartObject();
        json.WriteStartObject("study");
        json.WriteString("title", plan.Title);
        json.WriteString("reference", plan.Reference);
        WriteStrings(json, "conditions", plan.Conditions);
        WriteStrings(json, "sittings_done", plan.SittingsDone);
        json.WriteEndObject();
        json.WriteStartObject("goal");
        json.WriteString("kind", Hyphenated.Name(plan.Goal.Kind.ToString()));
        json.WriteMilliseconds("ms", plan.Goal.Ms);
        json.WriteNumber("assurance", plan.Goal.Assurance);
        json.WriteMilliseconds("level", plan.Goal.Level);
        json.WriteEndObject();
        json.WriteStartObject("variances");
        json.WriteMilliseconds("session_sd_ms", plan.Variances.SessionSdMs);
        json.WriteMilliseconds("own_session_sd_ms", plan.Variances.OwnSessionSdMs);
        json.WriteString("session_sd_source", Hyphenated.Name(plan.Variances.SessionSdSource.ToString()));
        json.WriteMilliseconds("trial_sd_ms", plan.Variances.TrialSdMs);
        json.WriteString("trial_sd_source", Hyphenated.Name(plan.Variances.TrialSdSource.ToString()));
        json.WriteNumber("sessions", plan.Variances.Sessions);
        json.WriteEndObject();
        json.WriteStartObject("costs");
        json.WriteNumber("minutes_per_sitting", plan.Costs.MinutesPerSitting);
        json.WriteNumber("minutes_per_condition", plan.Costs.MinutesPerCondition);
        json.WriteNumber("seconds_per_press", plan.Costs.SecondsPerPress);
        json.WriteEndObject();
        json.WriteNumberOrNull("economic_trials_per_session", plan.EconomicTrialsPerSession);
        json.WriteStartArray("alternatives");
        foreach (var alternative in plan.Alternatives)
        {
            Write(json, alternative);
        }

        json.WriteEndArray();
        json.WritePropertyName("advised");
        if (plan.Advised is { } advised)
        {
            Write(json, advised);
        }
        else
        {
            json.WriteNullValue();
        }

        json.WriteStartArray("order");
        foreach (var sitting in order)
        {
            foreach (var run in sitting.Runs)
            {
                json.WriteStartObject();
                json.WriteString("sitting", sitting.Sitting);
                json.WriteNumber("step", run.Step);
                json.WriteString("condition", run.Condition);
                json.WriteNumber("seed", run.Seed);
                json.WriteEndObject();
            }
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, PlanAlternative alternative)
    {
        json.WriteStartObject();
        json.WriteNumber("sittings", alternative.Sittings);
        json.WriteNumberOrNull("trials_per_session", alternative.TrialsPerSession);
        json.WriteNumberOrNull("presses", alternative.Presses);
        json.WriteNumberOrNull("bench_hours", alternative.Hours);
        json.WriteMilliseconds("endless_presses_ms", alternative.EndlessPressesMs);
        json.WriteEndObject();
    }

    private static void WriteStrings(Utf8JsonWriter json, string name, IReadOnlyList<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }
}
