namespace Tarry.Imports.UsbWire;

/// <summary>A packet on the wire that passed its checks.</summary>
/// <param name="Start">When its synchronisation began, in units of the recording.</param>
/// <param name="Identifier">The packet identifier (PID), four bits.</param>
/// <param name="Content">What follows it, without the check sum.</param>
internal readonly record struct UsbPacket(long Start, int Identifier, byte[] Content);
