using System.Text.Json;

namespace Tarry.Rig.HostEvents.Recording;

/// <summary>The first line of a recording: what was recorded, and how.</summary>
public sealed record RecordingHeader
{
    private const string Mark = "tarry-host-recording 1 ";
    private static readonly JsonSerializerOptions Options = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    /// <summary>The device's name.</summary>
    public required string Device { get; init; }

    /// <summary>Vendor and product, four and four hex digits; null where not known.</summary>
    public string? ProductId { get; init; }

    /// <summary>How the reports came: <c>host-events</c> (changes) or <c>host-reports</c> (bytes as sent).</summary>
    public required string Transport { get; init; }

    /// <summary>Whose clock stamped them.</summary>
    public required string Clock { get; init; }

    /// <summary>The report descriptor in hex; null where not known.</summary>
    public string? ReportDescriptor { get; init; }

    /// <summary>The chosen codes, where changes were recorded.</summary>
    public IReadOnlyList<string> Codes { get; init; } = [];

    /// <summary>What the chosen axes can say, where changes were recorded: a state of 32 bits does not tell it.</summary>
    public IReadOnlyList<RecordedAxis> Axes { get; init; } = [];

    /// <summary>Of a device and the chosen codes; none for a device that gives its reports' bytes.</summary>
    public static RecordingHeader Of(IHostInputDevice device, IReadOnlyList<RecordedCode> codes)
    {
        ArgumentNullException.ThrowIfNull(device);
        var description = device.Description;
        return new RecordingHeader
        {
            Device = description.Name,
            ProductId = description is { Vendor: { } vendor, Product: { } product } ? FormattableString.Invariant($"{vendor:x4}:{product:x4}") : null,
            Transport = codes.Count > 0 ? "host-events" : "host-reports",
            Clock = device.Clock.InWords(),
            ReportDescriptor = description.ReportDescriptor.IsEmpty ? null : Convert.ToHexStringLower(description.ReportDescriptor.Span),
            Codes = [.. codes.Select(code => code.ToString())],
            Axes =
            [
                .. description.Axes
                    .Where(axis => codes.Contains(new RecordedCode(InputCode.Absolute, axis.Code)))
                    .Select(axis => new RecordedAxis(new RecordedCode(InputCode.Absolute, axis.Code).Field(0).Column, axis.Minimum, axis.Maximum)),
            ],
        };
    }

    /// <summary>The line, without its end.</summary>
    public string ToLine() => Mark + JsonSerializer.Serialize(this, Options);

    /// <summary>Reads the line; null if it is not one.</summary>
    public static RecordingHeader? Read(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        try
        {
            var header = line.StartsWith(Mark, StringComparison.Ordinal) ? JsonSerializer.Deserialize<RecordingHeader>(line[Mark.Length..], Options) : null;
            return header is { Device: not null, Transport: not null, Clock: not null, Codes: { } codes } && codes.All(code => code is not null) ? header : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
