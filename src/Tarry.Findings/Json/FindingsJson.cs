using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Conditions;
using Tarry.Findings.Quality;
using Tarry.Metrology;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Json;

/// <summary>The findings document as JSON, by <c>docs/findings.schema.json</c>: the same document gives the same bytes.</summary>
public static class FindingsJson
{
    /// <summary>The document as indented JSON with line feeds, ending in one.</summary>
    public static string Write(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions
        {
            Indented = true,
            NewLine = "\n",
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }))
        {
            Write(json, document);
        }

        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    private static void WriteSetAside(Utf8JsonWriter json, FindingsDocument document)
    {
        if (document.SetAside is not { Count: > 0 } recordings)
        {
            return;
        }

        json.WriteStartArray("set_aside");
        foreach (var recording in recordings)
        {
            json.WriteStartObject();
            json.WriteString("session", recording.Session.ToString());
            json.WriteString("reason", recording.Reason);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, FindingsDocument document)
    {
        json.WriteStartObject();
        json.WriteStartObject("study");
        json.WriteString("title", document.Title);
        json.WriteString("reference", document.Reference);
        json.WriteMilliseconds("margin_ms", document.MarginMs);
        json.WriteEndObject();
        json.WriteNumber("seed", document.Seed);
        json.WriteString("version", document.Version);
        Write(json, document.Counts);
        json.WriteStartArray("conditions");
        foreach (var condition in document.Conditions)
        {
            Write(json, condition);
        }

        json.WriteEndArray();
        json.WriteStartArray("comparisons");
        foreach (var comparison in document.Comparisons)
        {
            Write(json, comparison);
        }

        json.WriteEndArray();
        WriteSetAside(json, document);
        FactorsJson.Write(json, document.Factors);
        json.WriteStartArray("ranking");
        foreach (var ranked in document.Ranking)
        {
            Write(json, ranked);
        }

        json.WriteEndArray();
        json.WritePlay(document.Play);
        Write(json, document.Cautions);
        json.WriteReportStreams(document.ReportStreams);
        json.WriteSticks(document.Sticks);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, ConditionFinding condition)
    {
        json.WriteStartObject();
        json.WriteString("id", condition.Id);
        json.WriteStartObject("factors");
        foreach (var (factor, level) in condition.Factors)
        {
            json.WriteString(factor, level);
        }

        json.WriteEndObject();
        json.WriteNumberOrNull("nominal_report_hz", condition.NominalReportHz);
        json.WriteBoolean("is_reference", condition.IsReference);
        ChainJson.Write(json, condition.Chain);
        json.WriteNumber("sessions", condition.UsedSessions);
        Write(json, condition.Counts);
        json.WriteEstimate("mean_ms", condition.Mean, Milliseconds);
        json.WriteScatterOrNothing("mean_scatter", condition.MeanScatter);
        if (condition.MeanWithBetweenSessions is { } wider)
        {
            json.WriteEstimate("mean_with_session_scatter_ms", wider, Milliseconds);
        }

        json.WriteEstimate("median_ms", condition.Median, Milliseconds);
        json.WriteEstimate("p05_ms", condition.P05, Milliseconds);
        json.WriteEstimate("p25_ms", condition.P25, Milliseconds);
        json.WriteEstimate("p75_ms", condition.P75, Milliseconds);
        json.WriteEstimate("p95_ms", condition.P95, Milliseconds);
        json.WriteEstimate("p99_ms", condition.P99, Milliseconds);
        json.WriteEstimate("sd_ms", condition.StandardDeviation, Milliseconds);
        json.WriteEstimate("spread_ms", condition.Spread, Milliseconds);
        json.WriteEstimate("late_share", condition.LateShare, Fraction);
        if (condition.LateBeyond is { } late)
        {
            json.WriteStartObject("late_definition");
            json.WriteMilliseconds("later_than_ms", late.Threshold.Milliseconds);
            json.WriteString("definition", late.Definition);
            json.WriteEndObject();
        }

        json.WriteEstimate("missed_share", condition.MissedShare, Fraction);
        if (condition.Relative is { } relative)
        {
            json.WriteEstimate("relative_ms", relative, Milliseconds);
        }
        else
        {
            json.WriteNull("relative_ms");
        }

        json.WriteBudget(condition.Budget);
        json.WriteReportInterval(condition.ReportInterval);
        ShapeJson.Write(json, condition);
        json.WriteDeviceOnly(condition.DeviceOnly);
        WriteSessions(json, condition.Sessions);
        Write(json, condition.Cautions);
        json.WriteEndObject();
    }

    private static void WriteSessions(Utf8JsonWriter json, IReadOnlyList<SessionFinding> sessions)
    {
        json.WriteStartArray("session_findings");
        foreach (var session in sessions)
        {
            json.WriteStartObject();
            json.WriteString("session", session.Key.ToString());
            Write(json, session.Counts);
            json.WriteEstimate("mean_within_session_ms", session.Mean, Milliseconds);
            json.WriteNumberOrNull("sd_ms", session.StandardDeviation?.Milliseconds);
            json.WriteBoolean("in_pooled_variance", session.InPool);
            json.WriteStartArray("exclusion_reasons");
            foreach (var reason in session.ExclusionReasons)
            {
                json.WriteStringValue(reason);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, ComparisonFinding comparison)
    {
        json.WriteStartObject();
        json.WriteString("a", comparison.A);
        json.WriteString("b", comparison.B);
        WriteResult(json, comparison);
        json.WriteEndObject();
    }

    /// <summary>All of a comparison but its two names.</summary>
    internal static void WriteResult(Utf8JsonWriter json, ComparisonFinding comparison)
    {
        json.WriteEstimate("difference_ms", comparison.Difference, Milliseconds);
        json.WriteStated("difference_uncertainty_ms", comparison.Budget);
        json.WriteScatterOrNothing("difference_scatter", comparison.Scatter);
        json.WriteProbabilityOrNull("p_adjusted", comparison.AdjustedP);
        json.WriteMilliseconds("margin_ms", comparison.MarginMs);
        json.WriteString("verdict", VerdictWording.Key(comparison.Verdict));
        WriteRefusal(json, comparison.Refusal);
        json.WriteNumberOrNull("minimum_detectable_ms", comparison.MinimumDetectable?.Milliseconds);
        WriteNeeded(json, comparison.Needed);
    }

    private static void WriteRefusal(Utf8JsonWriter json, IReadOnlyList<Caution> refusal)
    {
        json.WriteStartArray("verdict_refused_for");
        foreach (var caution in refusal)
        {
            json.WriteStartObject();
            json.WriteString("kind", CautionWording.Key(caution.Kind));
            json.WriteString("subject", caution.Subject);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    internal static void WriteNeeded(Utf8JsonWriter json, Needed? design)
    {
        if (design is { } needed)
        {
            json.WriteStartObject("needed");
            json.WriteNumber("sittings", needed.Sittings);
            json.WriteNumber("trials_per_session", needed.TrialsPerSession);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("needed");
        }
    }

    internal static void Write(Utf8JsonWriter json, RankedCondition ranked)
    {
        json.WriteStartObject();
        json.WriteString("id", ranked.Id);
        json.WriteNumber("best_rank", ranked.BestRank);
        json.WriteNumber("worst_rank", ranked.WorstRank);
        json.WriteNumber("group", ranked.Group);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, SessionCounts counts)
    {
        json.WriteStartObject("counts");
        json.WriteNumber("captured", counts.Captured);
        json.WriteNumber("used", counts.Used);
        json.WriteNumber("missed", counts.Missed);
        json.WriteNumber("early", counts.Early);
        json.WriteNumber("refused", counts.Refused);
        json.WriteNumber("excluded", counts.Excluded);
        json.WriteEndObject();
    }

    internal static void Write(Utf8JsonWriter json, IReadOnlyList<Caution> cautions)
    {
        json.WriteStartArray("cautions");
        foreach (var caution in cautions)
        {
            json.WriteStartObject();
            json.WriteString("kind", CautionWording.Key(caution.Kind));
            json.WriteString("subject", caution.Subject);
            foreach (var (name, value) in caution.Numbers)
            {
                json.WriteNumberOrNull(name, value);
            }

            json.WriteString("sentence", CautionWording.Sentence(caution));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static double Milliseconds(Latency latency) => latency.Milliseconds;

    private static double Milliseconds(LatencyDifference difference) => difference.Milliseconds;

    private static double Fraction(Proportion share) => share.Value;
}
