namespace Tarry.Imports.PacketCapture.Usb;

/// <summary>An endpoint as its descriptor states it (USB 2.0, 9.6.6), with the interface that it is of.</summary>
internal sealed record UsbEndpoint(int Address, int Interface, int InterfaceClass, int Attributes, int MaxPacketBytes, int BInterval)
{
    private const int HumanInterfaceDevice = 3;

    // Descriptors number the types of transfer otherwise than usbmon does.
    private const int InterruptInDescriptor = 3;

    public bool IsHid => InterfaceClass == HumanInterfaceDevice && (Attributes & 3) == InterruptInDescriptor;
}
