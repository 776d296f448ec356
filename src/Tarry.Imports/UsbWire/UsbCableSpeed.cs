namespace Tarry.Imports.UsbWire;

/// <summary>The signalling rate of a USB cable with two data lines that a logic analyser can follow.</summary>
public enum UsbCableSpeed
{
    /// <summary>1.5 Mbit/s; D- is high while idle.</summary>
    Low,

    /// <summary>12 Mbit/s; D+ is high while idle.</summary>
    Full,
}
