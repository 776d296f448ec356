namespace Tarry.Imports.PacketCapture.Usb;

/// <summary>The speed of a USB device, as far as the polling interval depends on it.</summary>
public enum UsbSpeed
{
    /// <summary>The capture does not say.</summary>
    Unknown,

    /// <summary>Low or full speed: intervals in frames of 1 ms.</summary>
    LowOrFull,

    /// <summary>High speed: intervals in powers of two of microframes.</summary>
    High,
}
