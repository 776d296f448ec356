using System.Text.Json;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;

namespace Tarry.Findings.Json;

/// <summary>What the figures of a stick are drawn from, as JSON; positions in per cent of half the range.</summary>
internal static class StickDrawingJson
{
    public static void Write(Utf8JsonWriter json, StickFinding finding)
    {
        json.WriteNumberOrNull("step_x_percent", finding.StepX);
        json.WriteNumberOrNull("step_y_percent", finding.StepY);
        Rose(json, finding);
        Clouds(json, finding);
        Spectra(json, finding);
        Lines(json, finding);
        Returns(json, finding);
        Stops(json, finding);
        json.WriteStartArray("non_linearity");
        foreach (var curve in finding.NonLinearity)
        {
            json.WriteStartObject();
            json.WriteString("part", Part(curve.Part));
            json.WriteNumber("passes", curve.Passes);
            json.WriteBoolean("steady_motion_assumed", curve.SteadyMotionAssumed);
            json.WriteNumbers("positions_percent", curve.Positions);
            json.WriteNumbers("departures_percent", curve.Departures);
            json.WriteNumbers("half_widths_percent", curve.HalfWidths);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Rose(Utf8JsonWriter json, StickFinding finding)
    {
        if (finding.Rose is not { } rose)
        {
            json.WriteNull("rose");
            return;
        }

        json.WriteStartObject("rose");
        json.WriteNumber("turns", rose.Turns);
        json.WriteNumber("sessions", rose.Sessions);
        json.WriteNumber("level", rose.Level);
        json.WriteNumber("circle_x_percent", JsonNumbers.Rounded(rose.Circle.X));
        json.WriteNumber("circle_y_percent", JsonNumbers.Rounded(rose.Circle.Y));
        json.WriteNumber("circle_radius_percent", JsonNumbers.Rounded(rose.Circle.Radius));
        json.WriteNumbers("distances_percent", rose.Distances);
        json.WriteNumbers("low_percent", rose.Low);
        json.WriteNumbers("high_percent", rose.High);
        json.WriteEndObject();
    }

    private static void Clouds(Utf8JsonWriter json, StickFinding finding)
    {
        json.WriteStartArray("rest_clouds");
        foreach (var cloud in finding.Clouds)
        {
            json.WriteStartObject();
            json.WriteString("session", cloud.Session.ToString());
            json.WriteNumber("positions", cloud.Positions);
            json.WriteNumber("mean_x_percent", JsonNumbers.Rounded(cloud.Ellipse.X));
            json.WriteNumber("mean_y_percent", JsonNumbers.Rounded(cloud.Ellipse.Y));
            json.WriteNumber("semi_major_percent", JsonNumbers.Rounded(cloud.Ellipse.SemiMajor));
            json.WriteNumber("semi_minor_percent", JsonNumbers.Rounded(cloud.Ellipse.SemiMinor));
            json.WriteNumber("angle_deg", JsonNumbers.Rounded(cloud.Ellipse.Angle * 180 / Math.PI));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Spectra(Utf8JsonWriter json, StickFinding finding)
    {
        json.WriteStartArray("rest_spectra");
        foreach (var spectrum in finding.Spectra)
        {
            json.WriteStartObject();
            json.WriteString("session", spectrum.Session.ToString());
            json.WriteString("part", Part(spectrum.Part));
            json.WriteNumber("pieces", spectrum.Pieces);
            json.WriteNumber("step_hz", JsonNumbers.Rounded(spectrum.StepHz));
            json.WriteNumberOrNull("line_hz", spectrum.Line?.FrequencyHz);
            json.WriteNumberOrNull("line_rms_percent", spectrum.Line?.Amplitude);
            json.WriteNumbers("percent_per_root_hz", spectrum.PercentPerRootHz);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Lines(Utf8JsonWriter json, StickFinding finding)
    {
        json.WriteStartArray("rest_lines");
        foreach (var line in finding.Lines)
        {
            json.WriteStartObject();
            json.WriteString("part", Part(line.Part));
            json.WriteNumber("frequency_hz", JsonNumbers.Rounded(line.FrequencyHz));
            json.WriteNumber("step_hz", JsonNumbers.Rounded(line.StepHz));
            json.WriteNumber("rms_percent", JsonNumbers.Rounded(line.RmsPercent));
            json.WriteNumber("told_in_sessions", line.ToldIn);
            json.WriteNumber("sessions", line.Sessions);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Returns(Utf8JsonWriter json, StickFinding finding)
    {
        json.WriteStartArray("returns");
        foreach (var direction in finding.Returns)
        {
            json.WriteStartObject();
            json.WriteNumber("direction_deg", direction.Degrees);
            json.WriteNumber("sessions", direction.Sessions);
            json.WriteNumber("releases", direction.Releases);
            json.WriteNumber("x_percent", JsonNumbers.Rounded(direction.X));
            json.WriteNumber("y_percent", JsonNumbers.Rounded(direction.Y));
            json.WriteNumberOrNull("half_width_x_percent", direction.HalfWidthX);
            json.WriteNumberOrNull("half_width_y_percent", direction.HalfWidthY);
            json.WriteNumbers("rests_x_percent", [.. direction.Rests.Select(rest => rest.X)]);
            json.WriteNumbers("rests_y_percent", [.. direction.Rests.Select(rest => rest.Y)]);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Stops(Utf8JsonWriter json, StickFinding finding)
    {
        json.WriteStartArray("stops");
        foreach (var stop in finding.Stops)
        {
            json.WriteStartObject();
            json.WriteNumber("angle_deg", JsonNumbers.Rounded(stop.Degrees));
            json.WriteNumber("said_deg", JsonNumbers.Rounded(stop.Said));
            json.WriteNumber("error_deg", JsonNumbers.Rounded(stop.Error));
            json.WriteNumberOrNull("half_width_deg", stop.HalfWidth);
            json.WriteNumber("sessions", stop.Sessions);
            json.WriteNumber("visits", stop.Visits);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string Part(StickPart part) => Hyphenated.Name(part.ToString());
}
