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
}
