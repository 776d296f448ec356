using System.Buffers.Binary;
using Tarry.Imports.PacketCapture.Files;
using Tarry.Studies.Reports;

namespace Tarry.Imports.PacketCapture.Usb;

/// <summary>Follows the transfers of all USB devices in a capture.</summary>
internal sealed class UsbTransfers(CaptureDefects defects)
{
    // Requests in flight on a host are tens; what is never answered is let go.
    private const int MostPending = 4_096;
    // More than any host has; a file of random numbers names millions.
    private const int MostDevices = 4_096;
    private const int GetDescriptor = 6;
    private const int SetProtocol = 0x0B;
    private readonly Dictionary<(int Bus, int Address), UsbDevice> devices = [];
    private readonly Dictionary<(int Bus, ulong Id), ulong> pending = [];
    private UsbDevice? latest;

    /// <summary>The devices, by bus and address.</summary>
    public IEnumerable<UsbDevice> Devices => devices.OrderBy(pair => pair.Key).Select(pair => pair.Value);

    public static bool Reads(int linkType) => linkType is UsbMonHeader.LinkType or UsbMonHeader.MappedLinkType or UsbPcapHeader.LinkType;

    public void Take(in CapturedPacket packet)
    {
        UsbTransfer transfer;
        string defect;
        var read = packet.LinkType == UsbPcapHeader.LinkType
            ? UsbPcapHeader.Read(packet.Data, out transfer, out defect)
            : UsbMonHeader.Read(packet.Data, packet.LinkType == UsbMonHeader.MappedLinkType, packet.BigEndian, out transfer, out defect);
        if (!read)
        {
            defects.Add(CaptureDefectKind.PacketMalformed, packet.Offset, defect);
        }
        else
        {
            Take(in transfer, packet.TimeNanoseconds, packet.Offset);
        }
    }

    /// <summary>Takes a transfer.</summary>
    /// <param name="transfer">The transfer.</param>
    /// <param name="timeNanoseconds">When.</param>
    /// <param name="offset">Where in the file.</param>
    public void Take(in UsbTransfer transfer, long timeNanoseconds, long offset)
    {
        if (transfer.Type == UsbTransferType.Control)
        {
            TakeControl(transfer);
        }
        else if (transfer is { IsCompletion: true, Succeeded: true, IsIn: true, Data.Length: > 0, Type: UsbTransferType.Interrupt or UsbTransferType.Bulk })
        {
            TakeReport(transfer, timeNanoseconds, offset);
        }
    }

    private void TakeReport(in UsbTransfer transfer, long timeNanoseconds, long offset)
    {
        if (transfer.CutShort)
        {
            defects.Add(CaptureDefectKind.PacketCutShort, offset, "a report was not captured to its end");
        }
        else if (transfer.Data.Length > ReportLog.LongestReport)
        {
            // Only mass storage and the like send so much at once.
            return;
        }
        else
        {
            Device(transfer).TakeReport(transfer, timeNanoseconds);
        }
    }

    private void TakeControl(in UsbTransfer transfer)
    {
        var key = (transfer.Bus, transfer.Id);
        if (!transfer.Setup.IsEmpty && !transfer.IsCompletion)
        {
            if (pending.Count >= MostPending)
            {
                pending.Clear();
            }

            pending[key] = BinaryPrimitives.ReadUInt64LittleEndian(transfer.Setup);
        }
        else if (transfer.IsCompletion && pending.Remove(key, out var setup) && transfer.Succeeded)
        {
            Answer(setup, transfer);
        }
    }

    private void Answer(ulong setup, in UsbTransfer transfer)
    {
        var (requestType, request) = ((int)(setup & 0xFF), (int)((setup >> 8) & 0xFF));
        var (value, index) = ((int)((setup >> 16) & 0xFFFF), (int)((setup >> 32) & 0xFFFF));
        switch ((requestType, request))
        {
            case (0x80, GetDescriptor) when value >> 8 == 1:
                Device(transfer).TakeDeviceDescriptor(transfer.Data);
                break;
            case (0x80, GetDescriptor) when value >> 8 == 2:
                Device(transfer).TakeConfiguration(transfer.Data);
                break;
            case (0x81, GetDescriptor) when value >> 8 == 0x22 && !transfer.Data.IsEmpty:
                Device(transfer).TakeReportDescriptor(index, transfer.Data);
                break;
            case (0x21, SetProtocol):
                Device(transfer).TakeProtocol(index, boot: value == 0);
                break;
        }
    }

    private UsbDevice Device(in UsbTransfer transfer)
    {
        // As a rule that of the packet before.
        if (latest is not null && latest.Bus == transfer.Bus && latest.Address == transfer.Device)
        {
            return latest;
        }

        var key = (transfer.Bus, transfer.Device);
        if (!devices.TryGetValue(key, out var device))
        {
            device = new UsbDevice(transfer.Bus, transfer.Device);
            if (devices.Count < MostDevices)
            {
                devices.Add(key, device);
            }
        }

        return latest = device;
    }
}
