using System.Text.Json.Serialization;

namespace Tarry.Studies.Sessions;

/// <summary>How a press moved an axis, and which level counts as the input. Levels are in 1/65535 of the span.</summary>
/// <param name="Drive"><c>switch</c> (analog switch, one step) or <c>dac</c> (digital-to-analog converter).</param>
/// <param name="Low">The level at rest.</param>
/// <param name="High">The level pressed; may be below the level at rest.</param>
/// <param name="Threshold">The stated level whose crossing is the input.</param>
/// <param name="RampUs">Time from the level at rest to the level pressed, along a straight line; 0 for a step.</param>
public sealed record AxisActuation(string Drive, int Low, int High, int Threshold, long RampUs)
{
    /// <summary>An analog switch.</summary>
    public const string Switch = "switch";

    /// <summary>A digital-to-analog converter.</summary>
    public const string Converter = "dac";

    private const int Span = 65_535;

    /// <summary>Time from the press to the crossing in microseconds of the rig's stated clock: ramp x (threshold - low) / (high - low).</summary>
    [JsonIgnore]
    public double CrossingUs => RampUs * (double)(Threshold - Low) / (High - Low);

    internal string? Broken() => this switch
    {
        { Drive: not (Switch or Converter) } => $"'{Drive}' drives no axis",
        { Low: < 0 or > Span } or { High: < 0 or > Span } => $"the levels {Low} and {High} are not within 0..65535",
        _ when Low == High => $"both levels of the axis are {Low}",
        _ when Threshold < Math.Min(Low, High) || Threshold > Math.Max(Low, High) => $"the threshold {Threshold} is not between the levels {Low} and {High}",
        { RampUs: < 0 } or { Drive: Switch, RampUs: not 0 } => $"a ramp of {RampUs} us is not possible with the drive '{Drive}'",
        _ => null,
    };
}
