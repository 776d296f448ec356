using System.Text.Json;
using Tarry.Rig.HostEvents;

namespace Tarry.Output;

/// <summary>The host's input devices as JSON.</summary>
internal static class HostInputJson
{
    private static readonly JsonSerializerOptions Options = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower, WriteIndented = true };

    public static void Write(IReadOnlyList<HostInputDescription> devices, Terminal terminal) => terminal.Out.WriteLine(JsonSerializer.Serialize(
        devices.Select(device => new
        {
            device.Path,
            device.Name,
            device.Bus,
            Vendor = device.Vendor?.ToString("x4", null),
            Product = device.Product?.ToString("x4", null),
            Buttons = device.Buttons.Select(code => InputCode.Name(InputCode.Key, code)),
            Axes = device.Axes.Select(axis => new { Code = InputCode.Name(InputCode.Absolute, axis.Code), axis.Minimum, axis.Maximum, axis.Fuzz, axis.Flat }),
            device.IsRelative,
            device.IsTextKeyboard,
            ReportDescriptor = device.ReportDescriptor.IsEmpty ? null : Convert.ToHexStringLower(device.ReportDescriptor.Span),
            device.Obstacle,
        }),
        Options));
}
