namespace Tarry.Imports.PacketCapture.Bluetooth;

/// <summary>A packet between a host and its Bluetooth controller.</summary>
internal readonly ref struct HciPacket
{
    public required int Adapter { get; init; }

    public required HciPacketType Type { get; init; }

    /// <summary>Whether it came from the controller.</summary>
    public required bool IsReceived { get; init; }

    public required ReadOnlySpan<byte> Data { get; init; }
}
