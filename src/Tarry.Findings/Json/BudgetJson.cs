using System.Text.Json;
using Tarry.Findings.Budgets;
using Tarry.Metrology;

namespace Tarry.Findings.Json;

/// <summary>Uncertainty budgets as JSON. Infinite degrees of freedom are null.</summary>
internal static class BudgetJson
{
    public static void WriteBudget(this Utf8JsonWriter json, ConditionBudget? budget)
    {
        if (budget is null)
        {
            json.WriteNull("absolute");
            return;
        }

        json.WriteStartObject("absolute");
        json.WriteBoolean("calibrated", budget.Calibrated);
        json.WriteStartArray("inputs");
        foreach (var input in budget.Inputs)
        {
            Write(json, input);
        }

        json.WriteEndArray();
        json.WriteNumberOrNull("between_sessions_sd_ms", budget.BetweenSessions?.Milliseconds);
        json.WriteNumberOrNull("within_sessions_sd_ms", budget.WithinSessions?.Milliseconds);
        (string Name, AbsoluteLatency? Latency)[] latencies =
        [
            ("mean_ms", budget.Mean), ("median_ms", budget.Median), ("p05_ms", budget.P05), ("p95_ms", budget.P95), ("p99_ms", budget.P99),
        ];
        foreach (var (name, latency) in latencies)
        {
            Write(json, name, latency);
        }

        json.WriteEndObject();
    }

    public static void WriteStated(this Utf8JsonWriter json, string name, StatedUncertainty? stated)
    {
        if (stated is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        WriteFields(json, stated);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, BudgetInput input)
    {
        json.WriteStartObject();
        json.WriteString("source", Name(input.Source));
        json.WriteString("unit", input.Unit);
        json.WriteNumberOrNull("estimate", input.Estimate);
        json.WriteNumberOrNull("half_width", input.HalfWidth);
        json.WriteString("distribution", Hyphenated.Name(input.Distribution.ToString()));
        json.WriteNumberOrNull("standard_uncertainty", input.StandardUncertainty);
        json.WriteNumberOrNull("degrees_of_freedom", Finite(input.DegreesOfFreedom));
        json.WriteString("basis", input.Basis);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, string name, AbsoluteLatency? latency)
    {
        if (latency is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        json.WriteMilliseconds("value", latency.Value.Milliseconds);
        json.WriteMilliseconds("low", latency.Interval.Low.Milliseconds);
        json.WriteMilliseconds("high", latency.Interval.High.Milliseconds);
        WriteFields(json, latency.Stated);
        json.WriteEndObject();
    }

    private static void WriteFields(Utf8JsonWriter json, StatedUncertainty stated)
    {
        var uncertainty = stated.Uncertainty;
        json.WriteNumber("level", uncertainty.Level);
        json.WriteMilliseconds("correction", stated.Correction.Milliseconds);
        json.WriteMilliseconds("standard_uncertainty", uncertainty.Standard);
        json.WriteNumberOrNull("effective_degrees_of_freedom", Finite(uncertainty.DegreesOfFreedom));
        json.WriteNumberOrNull("coverage_factor", uncertainty.CoverageFactor);
        json.WriteMilliseconds("expanded", uncertainty.Expanded);
        json.WriteStartArray("contributions");
        foreach (var part in stated.Contributions)
        {
            json.WriteStartObject();
            json.WriteString("source", Name(part.Source));
            json.WriteMilliseconds("contribution", part.Milliseconds);
            json.WriteNumberOrNull("degrees_of_freedom", Finite(part.DegreesOfFreedom));
            json.WriteBoolean("cancels", part.Cancels);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string Name(UncertaintySource source) => Hyphenated.Name(source.ToString());

    // Beyond this many a coverage factor no longer moves, and the digits of a nearly infinite number mean nothing.
    private const double AsGoodAsInfinite = 1e6;

    private static double? Finite(double degreesOfFreedom) => degreesOfFreedom < AsGoodAsInfinite ? degreesOfFreedom : null;
}
