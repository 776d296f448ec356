namespace Tarry.Imports.UsbWire;

/// <summary>What a device sent when it was polled.</summary>
/// <param name="Time">When its data packet began, in units of the recording.</param>
/// <param name="Address">The device's address on the bus.</param>
/// <param name="Endpoint">The endpoint that was polled.</param>
/// <param name="Payload">The bytes of the report.</param>
public sealed record UsbReport(long Time, int Address, int Endpoint, IReadOnlyList<byte> Payload);
