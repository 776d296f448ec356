namespace Tarry.Rig.HostEvents;

/// <summary>An input device as the host sees it.</summary>
public sealed record HostInputDescription
{
    /// <summary>What the user gives to open it: unique on this host.</summary>
    public required string Path { get; init; }

    /// <summary>What it calls itself.</summary>
    public required string Name { get; init; }

    /// <summary>How it is connected, such as <c>usb</c> or <c>bluetooth</c>; null where the system does not say.</summary>
    public string? Bus { get; init; }

    /// <summary>Its vendor's number; null where the system does not say.</summary>
    public ushort? Vendor { get; init; }

    /// <summary>Its product's number; null where the system does not say.</summary>
    public ushort? Product { get; init; }

    /// <summary>Codes of its buttons and keys; empty where the system gives raw reports only.</summary>
    public IReadOnlyList<ushort> Buttons { get; init; } = [];

    /// <summary>Its axes; empty where the system gives raw reports only.</summary>
    public IReadOnlyList<InputAxis> Axes { get; init; } = [];

    /// <summary>Whether it steps, as a mouse does.</summary>
    public bool IsRelative { get; init; }

    /// <summary>Its HID report descriptor; empty where the system does not give it.</summary>
    public ReadOnlyMemory<byte> ReportDescriptor { get; init; }

    /// <summary>Whether people type text on it: what is read of it must not be kept without their knowledge.</summary>
    public bool IsTextKeyboard { get; init; }

    /// <summary>Why it cannot be read now, and what to do; null where it can.</summary>
    public string? Obstacle { get; init; }
}
