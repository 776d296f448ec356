using System.Text.Json;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Rankings;
using Tarry.Findings.Sticks.Reshaping;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Json;

/// <summary>Sticks as JSON; a study without any has no such key.</summary>
internal static class StickJson
{
    public static void WriteSticks(this Utf8JsonWriter json, StudySticks? sticks)
    {
        if (sticks is null)
        {
            return;
        }

        json.WriteStartObject("sticks");
        json.WriteStartArray("conditions");
        foreach (var condition in sticks.Conditions)
        {
            Write(json, condition);
        }

        json.WriteEndArray();
        json.WriteStartArray("rankings");
        foreach (var ranking in sticks.Rankings)
        {
            Write(json, ranking);
        }

        json.WriteEndArray();
        json.WriteStartArray("reshapings");
        foreach (var reshaping in sticks.Reshapings)
        {
            Write(json, reshaping);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, StickFinding finding)
    {
        json.WriteStartObject();
        json.WriteString("id", finding.Id);
        json.WriteStartArray("sessions");
        foreach (var session in finding.Sessions)
        {
            json.WriteStartObject();
            json.WriteString("session", session.Session.ToString());
            json.WriteString("procedure", StickProcedures.Name(session.Procedure));
            json.WriteString("source", session.Source);
            json.WriteNumber("positions", session.Positions);
            json.WriteNumber("seconds", JsonNumbers.Rounded(session.Seconds));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartObject("measures");
        foreach (var result in finding.Measures)
        {
            json.WriteOutcome(StickMeasureText.Key(result.Measure, result.Part), result.Outcome);
        }

        json.WriteEndObject();
        json.WriteStartArray("faults");
        foreach (var fault in finding.Faults)
        {
            json.WriteStartObject();
            json.WriteString("kind", Hyphenated.Name(fault.Kind.ToString()));
            json.WriteString("measure", StickMeasureText.Key(fault.Measure, fault.Part));
            json.WriteProbabilityOrNull("p_adjusted", fault.AdjustedP);
            json.WriteNumber("allowance", JsonNumbers.Rounded(fault.Allowance));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("dead_zone_form", Hyphenated.Name(finding.DeadZone.ToString()));
        StickDrawingJson.Write(json, finding);
        json.WriteEndObject();
    }

    /// <summary>An estimate, or why there is none and what to do.</summary>
    private static void WriteOutcome(this Utf8JsonWriter json, string name, StickOutcome outcome)
    {
        json.WriteStartObject(name);
        switch (outcome)
        {
            case StickEstimate estimate:
                json.WriteNumber("value", JsonNumbers.Rounded(estimate.Value));
                json.WriteNumber("low", JsonNumbers.Rounded(estimate.Low));
                json.WriteNumber("high", JsonNumbers.Rounded(estimate.High));
                json.WriteNumber("level", estimate.Level);
                json.WriteString("method", estimate.Method);
                json.WriteNumber("replicates", estimate.Replicates);
                json.WriteString("replicates_of", estimate.ReplicateOf);
                json.WriteNumber("sessions", estimate.Sessions);
                break;
            case StickRefusal refusal:
                json.WriteStartObject("refused");
                json.WriteString("reason", StickRefusalWording.Key(refusal.Reason));
                json.WriteNumber("have", JsonNumbers.Rounded(refusal.Have));
                json.WriteNumber("need", JsonNumbers.Rounded(refusal.Need));
                json.WriteString("sentence", StickRefusalWording.Sentence(refusal));
                json.WriteEndObject();
                break;
        }

        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, StickRanking ranking)
    {
        json.WriteStartObject();
        json.WriteString("measure", StickMeasureText.Key(ranking.Measure, ranking.Part));
        json.WriteStartArray("ranking");
        foreach (var place in ranking.Places)
        {
            FindingsJson.Write(json, place);
        }

        json.WriteEndArray();
        json.WriteStartArray("comparisons");
        foreach (var pair in ranking.Pairs)
        {
            json.WriteStartObject();
            json.WriteString("a", pair.A);
            json.WriteString("b", pair.B);
            json.WriteOutcome(pair.IsRatio ? "ratio" : "difference", pair.Difference);
            json.WriteProbabilityOrNull("p_adjusted", pair.AdjustedP);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, ReshapingFinding reshaping)
    {
        json.WriteStartObject();
        json.WriteString("with", reshaping.With);
        json.WriteString("without", reshaping.Without);
        json.WriteString("layer", reshaping.Layer);
        json.WriteStartArray("kinds");
        foreach (var kind in reshaping.Kinds)
        {
            json.WriteStringValue(Hyphenated.Name(kind.ToString()));
        }

        json.WriteEndArray();
        json.WriteOutcome("squareness_relative_percent", reshaping.Squareness);
        json.WriteOutcome("dead_zone_percent", reshaping.DeadZone);
        json.WriteOutcome("saturation_percent", reshaping.Saturation);
        json.WriteOutcome("exponent", reshaping.Exponent);
        json.WriteStartObject("map");
        json.WriteNumbers("without_percent", reshaping.Map.Select(point => point.Without));
        json.WriteNumbers("with_percent", reshaping.Map.Select(point => point.With));
        json.WriteNumbers("low_percent", reshaping.Map.Select(point => point.Low));
        json.WriteNumbers("high_percent", reshaping.Map.Select(point => point.High));
        json.WriteEndObject();
        json.WriteNumbers("reach_ratio", reshaping.ReachRatio);
        json.WriteEndObject();
    }
}
