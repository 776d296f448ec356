using System.Text.Json;
using Tarry.Findings.Play;

namespace Tarry.Findings.Json;

/// <summary>What a study means for play, as JSON.</summary>
internal static class PlayJson
{
    public static void WritePlay(this Utf8JsonWriter json, StudyPlay? play)
    {
        if (play is null)
        {
            return;
        }

        json.WriteStartObject("play");
        WriteNumbers(json, "window_ms", play.Settings.WindowsMs);
        json.WriteBoolean("windows_are_defaults", play.Settings.WindowsAreDefaults);
        WriteNumbers(json, "player_sd_ms", play.Settings.PlayerSdsMs);
        json.WriteBoolean("player_sds_are_defaults", play.Settings.PlayerSdsAreDefaults);
        json.WriteStartArray("conditions");
        foreach (var condition in play.Conditions)
        {
            Write(json, condition);
        }

        json.WriteEndArray();
        json.WriteStartArray("rankings");
        foreach (var ranking in play.Rankings)
        {
            json.WriteStartObject();
            WriteSetting(json, ranking.PlayerSdMs, ranking.WindowMs);
            json.WriteStartArray("conditions");
            foreach (var ranked in ranking.Conditions)
            {
                FindingsJson.Write(json, ranked);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("comparisons");
        foreach (var comparison in play.Comparisons)
        {
            json.WriteStartObject();
            json.WriteString("a", comparison.A);
            json.WriteString("b", comparison.B);
            WriteSetting(json, comparison.PlayerSdMs, comparison.WindowMs);
            json.WriteEstimate("difference", comparison.Difference, difference => difference.Value);
            json.WriteProbabilityOrNull("p_adjusted", comparison.AdjustedP);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, PlayFinding condition)
    {
        json.WriteStartObject();
        json.WriteString("id", condition.Id);
        json.WriteNumberOrNull("learned_ms", condition.Learned?.Milliseconds);
        json.WriteEstimate("device_error_ms", condition.DeviceError, error => error.Milliseconds);
        WriteNumbers(json, "errors_with_player_ms", condition.ErrorsWithPlayerMs);
        json.WriteStartArray("windows");
        foreach (var window in condition.Windows)
        {
            Write(json, window);
        }

        json.WriteEndArray();
        json.WriteStartArray("curves");
        foreach (var curve in condition.Curves)
        {
            json.WriteStartObject();
            json.WriteMilliseconds("player_sd_ms", curve.PlayerSdMs);
            json.WriteMilliseconds("step_ms", curve.StepMs);
            WriteNumbers(json, "hit_probabilities", curve.HitProbabilities);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, PlayWindow window)
    {
        json.WriteStartObject();
        WriteSetting(json, window.PlayerSdMs, window.WindowMs);
        json.WriteEstimate("hit_probability", window.HitProbability, probability => probability.Value);
        json.WriteNumberOrNull("compensation_ms", window.Compensation?.Milliseconds);
        json.WriteStartArray("good_compensations_ms");
        foreach (var interval in window.GoodCompensations)
        {
            json.WriteStartObject();
            json.WriteMilliseconds("low", interval.Low.Milliseconds);
            json.WriteMilliseconds("high", interval.High.Milliseconds);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteSetting(Utf8JsonWriter json, double playerSdMs, double windowMs)
    {
        json.WriteMilliseconds("player_sd_ms", playerSdMs);
        json.WriteMilliseconds("window_ms", windowMs);
    }

    private static void WriteNumbers(Utf8JsonWriter json, string name, IReadOnlyList<double> numbers)
    {
        json.WriteStartArray(name);
        foreach (var number in numbers)
        {
            json.WriteNumberValue(JsonNumbers.Rounded(number));
        }

        json.WriteEndArray();
    }
}
