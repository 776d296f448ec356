using System.Text.Json;
using Tarry.Findings.Conditions;
using Tarry.Findings.Shapes;
using Tarry.Metrology;
using Tarry.Statistics.Shapes;

namespace Tarry.Findings.Json;

/// <summary>Shape, block width and late tail of a condition as JSON.</summary>
internal static class ShapeJson
{
    // A fit is the same on every machine to far less than this, and a bench to far more.
    private const int Decimals = 5;

    /// <summary>Writes the properties <c>shape</c>, <c>block_width_ms</c> and <c>late_tail</c>.</summary>
    public static void Write(Utf8JsonWriter json, ConditionFinding condition)
    {
        switch (condition.Shape)
        {
            case ShapeFinding shape:
                Write(json, shape);
                break;
            case ShapeNotEnough not:
                json.WriteStartObject("shape");
                WriteNotEnough(json, not.Have, not.Need, not.Of);
                json.WriteEndObject();
                break;
            default:
                json.WriteNull("shape");
                break;
        }

        Write(json, condition.BlockWidth);
        Write(json, condition.LateTail);
    }

    private static void Write(Utf8JsonWriter json, ShapeFinding shape)
    {
        json.WriteStartObject("shape");
        json.WriteString("family", Key(shape.Family));
        json.WriteStartObject("parameters");
        foreach (var (name, value) in shape.Parameters)
        {
            json.WriteNumber(name, Rounded(value));
        }

        json.WriteEndObject();
        json.WriteNumber("late_share", Rounded(shape.LateShare));
        json.WriteBoolean("decided", shape.Decided);
        json.WriteNumber("margin_in_bic", Math.Round(shape.MarginInBic, 2));
        json.WriteStartArray("candidates");
        foreach (var candidate in shape.Candidates)
        {
            json.WriteStartObject();
            json.WriteString("family", Key(candidate.Family));
            json.WriteNumber("bic", Math.Round(candidate.Bic, 2));
            json.WriteNumber("parameters", candidate.Parameters);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (shape.Fit is { } fit)
        {
            json.WriteStartObject("goodness_of_fit");
            json.WriteNumber("chi_squared", Math.Round(fit.ChiSquared, 2));
            json.WriteNumber("degrees_of_freedom", fit.DegreesOfFreedom);
            json.WriteProbabilityOrNull("p", Math.Round(fit.P, Decimals));
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("goodness_of_fit");
        }

        json.WriteStartObject("curve");
        json.WriteNumber("from_ms", Rounded(shape.Curve.FromMs));
        json.WriteNumber("step_ms", Rounded(shape.Curve.StepMs));
        json.WriteStartArray("per_ms");
        foreach (var density in shape.Curve.PerMs)
        {
            json.WriteNumberValue(Rounded(density));
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteNumberOrNull("session_shift_sd_ms", shape.SessionShift is { } shift ? Rounded(shift.Milliseconds) : null);
        json.WriteNumber("trials", shape.Trials);
        json.WriteNumber("sessions", shape.Sessions);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, BlockWidthFinding? finding)
    {
        if (finding is null)
        {
            json.WriteNull("block_width_ms");
            return;
        }

        json.WriteStartObject("block_width_ms");
        if (finding.Width is { } width)
        {
            json.WriteNumber("value", Rounded(width.Value.Milliseconds));
            json.WriteNumber("low", Rounded(width.Interval.Low.Milliseconds));
            json.WriteNumber("high", Rounded(width.Interval.High.Milliseconds));
            json.WriteNumber("level", width.Level);
            json.WriteString("method", width.Method);
            json.WriteNumber("trials", width.Trials);
            json.WriteNumber("sessions", width.Sessions);
        }
        else
        {
            json.WriteStartObject("not_identifiable");
            json.WriteNumberOrNull("upper_ms", finding.AtMost is { } most ? Rounded(most.Milliseconds) : null);
            json.WriteString("reason", finding.Reason is { } reason ? Hyphenated.Name(reason.ToString()) : "");
            json.WriteEndObject();
        }

        json.WriteString("evidence", Hyphenated.Name(finding.Evidence.ToString()));
        json.WriteNumberOrNull("by_moments_ms", finding.ByMoments is { } moments ? Rounded(moments.Milliseconds) : null);
        if (finding.MomentsAgree is { } agree)
        {
            json.WriteBoolean("moments_agree", agree);
        }
        else
        {
            json.WriteNull("moments_agree");
        }

        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, LateTailFinding? tail)
    {
        if (tail is null)
        {
            json.WriteNull("late_tail");
            return;
        }

        json.WriteStartObject("late_tail");
        json.WriteEstimate("share_by_fit", tail.ShareByFit, share => Rounded(share.Value));
        json.WriteNumberOrNull("block_end_ms", tail.BlockEnd is { } end ? Rounded(end.Milliseconds) : null);
        if (tail.LumpInterval is { } interval)
        {
            json.WriteEstimate("lump_interval_ms", interval, Milliseconds);
        }
        else
        {
            json.WriteNull("lump_interval_ms");
        }

        json.WriteStartArray("lumps");
        foreach (var lump in tail.Lumps)
        {
            json.WriteStartObject();
            json.WriteNumber("multiple", lump.Multiple);
            json.WriteNumber("offset_ms", Rounded(lump.Offset.Milliseconds));
            json.WriteNumber("count", lump.Count);
            json.WriteEstimate("share", lump.Share, share => share.Value);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEstimate("p999_ms", tail.P999, latency => latency.Milliseconds);
        json.WriteEndObject();
    }

    private static void WriteNotEnough(Utf8JsonWriter json, int have, int need, string of)
    {
        json.WriteStartObject("not_enough");
        json.WriteNumber("have", have);
        json.WriteNumber("need", need);
        json.WriteString("of", of);
        json.WriteEndObject();
    }

    private static string Key(ShapeFamily family) => Hyphenated.Name(family.ToString());

    private static double Milliseconds(LatencyDifference difference) => Rounded(difference.Milliseconds);

    private static double Rounded(double value) => Math.Round(value, Decimals, MidpointRounding.ToEven) + 0.0;
}
