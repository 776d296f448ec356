using Tarry.Imports.PacketCapture.Usb;

namespace Tarry.Imports.PacketCapture;

/// <summary>What is taken from a packet capture, and what the user knows that it does not say. See <c>docs/formats/packet-capture.md</c>.</summary>
public sealed record PacketCaptureOptions
{
    /// <summary>The condition of the session.</summary>
    public string? Condition { get; init; }

    /// <summary>The sitting of the session.</summary>
    public string? Sitting { get; init; }

    /// <summary>The device whose reports are taken; null where the capture has one only.</summary>
    public string? Device { get; init; }

    /// <summary>The speed of a USB device, where the capture does not say it.</summary>
    public UsbSpeed Speed { get; init; }

    /// <summary>A file with the device's report descriptor, where the capture does not hold it.</summary>
    public string? ReportDescriptorFile { get; init; }

    /// <summary>What marks a press: a device, or a device and a field of it, as <c>usb1.7</c> or <c>usb1.7:button_1</c>. Null: reports are taken, not latencies.</summary>
    public string? Marker { get; init; }

    /// <summary>The field of the device that answers; null for any change of its reports.</summary>
    public string? Button { get; init; }

    /// <summary>How long after a press an answer counts, in milliseconds.</summary>
    public double TimeOutMs { get; init; } = 500;

    /// <summary>Presses of a rig, on its own clock. Without <see cref="ClockOffsetMs"/> reports are taken, and it is said how the latencies differ. Null: none.</summary>
    public RigPresses? Presses { get; init; }

    /// <summary>Milliseconds since the capture's first packet when the rig's clock was at 0; null where not known.</summary>
    public double? ClockOffsetMs { get; init; }

    /// <summary>How much faster than the rig's the capture's clock runs, in parts per million, where <see cref="ClockOffsetMs"/> is stated.</summary>
    public double ClockRatePpm { get; init; }
}
