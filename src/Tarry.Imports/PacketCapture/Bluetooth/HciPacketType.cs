namespace Tarry.Imports.PacketCapture.Bluetooth;

/// <summary>The kinds of HCI packet that reports are found by, numbered as H4 numbers them.</summary>
internal enum HciPacketType
{
    Command = 1,
    Acl = 2,
    Event = 4,
}
