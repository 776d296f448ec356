using System.Globalization;
using Tarry.Studies.Reports;

namespace Tarry.Rig.HostEvents.Recording;

/// <summary>A button or axis that is recorded: 32 bits of every report, where it stood after it.</summary>
/// <param name="Type">Its event type.</param>
/// <param name="Code">Its code.</param>
public readonly record struct RecordedCode(ushort Type, ushort Code)
{
    /// <summary>How many bits it takes.</summary>
    public const int Bits = 32;

    /// <summary>Its field, where it is the one of this index.</summary>
    public ReportField Field(int index)
    {
        var usage = Usage();
        return new ReportField
        {
            Column = InputCode.Name(Type, Code).ToLowerInvariant().Replace(':', '_'),
            Endpoint = 0,
            ReportId = null,
            BitOffset = Bits * index,
            BitSize = Bits,
            IsRelative = Type == InputCode.Relative,
            LogicalMinimum = int.MinValue,
            LogicalMaximum = int.MaxValue,
            Usages = [usage],
        };
    }

    /// <summary>What a device has, chosen where the user chooses nothing: all of it but keys.</summary>
    public static IReadOnlyList<RecordedCode> AllOf(HostInputDescription device)
    {
        ArgumentNullException.ThrowIfNull(device);
        var buttons = device.Buttons.Where(code => code >= 0x100).Select(code => new RecordedCode(InputCode.Key, code));
        var axes = device.Axes.Select(axis => new RecordedCode(InputCode.Absolute, axis.Code));
        RecordedCode[] steps = device.IsRelative ? [new(InputCode.Relative, 0), new(InputCode.Relative, 1)] : [];
        return [.. buttons, .. axes, .. steps];
    }

    /// <summary>Reads codes that the user names.</summary>
    /// <exception cref="HostInputException">One is not a name, or the device has no such thing.</exception>
    public static IReadOnlyList<RecordedCode> Parse(HostInputDescription device, IEnumerable<string> names)
    {
        ArgumentNullException.ThrowIfNull(device);
        return [.. names.Distinct(StringComparer.OrdinalIgnoreCase).Select(name => InputCode.TryParse(name, out var found) && Has(device, found.Type, found.Code)
            ? new RecordedCode(found.Type, found.Code)
            : throw new HostInputException($"{device.Path} has no '{name}'.", "Take one that 'tarry host devices' shows, or write its number as KEY:304."))];
    }

    /// <summary>How it is written into a recording.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Type}:{Code}");

    /// <summary>Reads what <see cref="ToString"/> wrote; null if it is not that.</summary>
    public static RecordedCode? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split(':');
        return parts.Length == 2
            && ushort.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var type)
            && ushort.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var code)
            ? new RecordedCode(type, code)
            : null;
    }

    private static bool Has(HostInputDescription device, ushort type, ushort code) => type switch
    {
        InputCode.Key => device.Buttons.Count == 0 || device.Buttons.Contains(code),
        InputCode.Absolute => device.Axes.Any(axis => axis.Code == code),
        _ => device.IsRelative,
    };

    // HID Usage Tables: page 1 has the axes from usage 0x30 on, page 9 the buttons; what has no place there is on a page of vendors.
    private UsageRange Usage()
    {
        const ushort firstGamepadButton = 0x130;
        const int vendorPage = 0xff00;
        return this switch
        {
            { Type: InputCode.Absolute, Code: <= 5 } or { Type: InputCode.Relative, Code: <= 5 } => new UsageRange(1, 0x30 + Code, 0x30 + Code),
            { Type: InputCode.Key, Code: >= firstGamepadButton and <= 0x13e } => new UsageRange(9, Code - firstGamepadButton + 1, Code - firstGamepadButton + 1),
            { Type: InputCode.Key, Code: >= InputCode.MouseLeft and <= 0x117 } => new UsageRange(9, Code - InputCode.MouseLeft + 1, Code - InputCode.MouseLeft + 1),
            _ => new UsageRange(vendorPage, Code, Code),
        };
    }
}
