namespace Tarry.Imports.UsbWire;

/// <summary>Which channels of a recording are the two data lines of a USB cable.</summary>
/// <param name="PlusChannel">D+: its name, path or identifier.</param>
/// <param name="MinusChannel">D-, named in the same way.</param>
/// <param name="Speed">The signalling rate.</param>
public sealed record UsbCable(string PlusChannel, string MinusChannel, UsbCableSpeed Speed);
