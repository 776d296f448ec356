namespace Tarry.Imports.PacketCapture.Bluetooth;

/// <summary>A connection of an adapter, from its handle being given to its end.</summary>
internal sealed class BluetoothLink(BluetoothDevice device)
{
    public BluetoothDevice Device => device;

    public L2capAssembly Received { get; } = new();

    public L2capAssembly Sent { get; } = new();

    public L2capChannels Channels { get; } = new();
}
