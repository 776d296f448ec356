namespace Tarry.Imports.PacketCapture.Usb;

/// <summary>The type of a transfer, numbered as usbmon and USBPcap number them.</summary>
internal enum UsbTransferType
{
    Isochronous = 0,
    Interrupt = 1,
    Control = 2,
    Bulk = 3,
}
