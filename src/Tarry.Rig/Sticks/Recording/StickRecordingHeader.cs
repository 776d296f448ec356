using System.Text.Json;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.Sticks.Recording;

/// <summary>The first line of a recording of the rig's readings: what was recorded, and how.</summary>
public sealed record StickRecordingHeader
{
    private const string Mark = "tarry-stick-recording 1 ";
    private static readonly JsonSerializerOptions Options = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    /// <summary>The procedure's name.</summary>
    public required string Procedure { get; init; }

    /// <summary>The board.</summary>
    public required string Board { get; init; }

    /// <summary>Its firmware.</summary>
    public required string Firmware { get; init; }

    /// <summary>Its boot counter.</summary>
    public required int BootId { get; init; }

    /// <summary>Ticks a second as it states them.</summary>
    public required long TickHz { get; init; }

    /// <summary>Time between readings.</summary>
    public required long IntervalUs { get; init; }

    /// <summary>What the greatest reading stands for: <c>aref</c> or <c>supply</c>.</summary>
    public required string Reference { get; init; }

    /// <summary>Whether the wiper of y gives less as the stick is pushed away.</summary>
    public bool YIsDown { get; init; }

    /// <summary>The standard uncertainty of the stimulus; null where not stated.</summary>
    public double? StimulusUncertainty { get; init; }

    /// <summary>The line, without its end.</summary>
    public string ToLine() => Mark + JsonSerializer.Serialize(this, Options);

    /// <summary>Reads the line; null if it is not one.</summary>
    public static StickRecordingHeader? Read(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        try
        {
            return line.StartsWith(Mark, StringComparison.Ordinal)
                && JsonSerializer.Deserialize<StickRecordingHeader>(line[Mark.Length..], Options) is { TickHz: > 0, IntervalUs: > 0 } header
                && StickProcedures.Find(header.Procedure) is not null
                    ? header
                    : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
