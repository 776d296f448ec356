using System.Buffers.Binary;
using Tarry.Studies.Reports;

namespace Tarry.Imports.PacketCapture.Usb;

/// <summary>What a capture says of one USB device: its descriptors, and the reports of its IN endpoints.</summary>
internal sealed class UsbDevice(int bus, int address)
{
    private readonly Dictionary<int, byte[]> reportDescriptors = [];
    private readonly Dictionary<int, EndpointState> states = [];
    private readonly HashSet<int> bootProtocol = [];
    private Dictionary<int, UsbEndpoint>? endpoints;
    private int? maxPacketOfControl;

    /// <summary>Bulk packets longer than this are of no input device: it is the greatest of an interrupt endpoint at full speed.</summary>
    private const int LongestBulkReport = 64;

    public int Bus => bus;

    public int Address => address;

    public string? ProductId { get; private set; }

    /// <summary>All that came in on IN endpoints, HID or not.</summary>
    public ReportLog Log { get; } = new();

    public void TakeDeviceDescriptor(ReadOnlySpan<byte> descriptor)
    {
        if (descriptor.Length >= 8 && descriptor[1] == 1)
        {
            maxPacketOfControl = descriptor[7];
        }

        if (descriptor.Length >= 12 && descriptor[1] == 1)
        {
            ProductId = $"{BinaryPrimitives.ReadUInt16LittleEndian(descriptor[8..]):x4}:{BinaryPrimitives.ReadUInt16LittleEndian(descriptor[10..]):x4}";
        }
    }

    public void TakeConfiguration(ReadOnlySpan<byte> descriptor) => endpoints = UsbConfiguration.Endpoints(descriptor) ?? endpoints;

    public void TakeReportDescriptor(int interfaceNumber, ReadOnlySpan<byte> descriptor)
    {
        // A driver may ask for the first bytes alone before it asks for all.
        if (!reportDescriptors.TryGetValue(interfaceNumber, out var known) || descriptor.Length >= known.Length)
        {
            reportDescriptors[interfaceNumber] = descriptor.ToArray();
        }
    }

    /// <summary>In the boot protocol reports have the fixed form of HID 1.11, appendix B, not that of the descriptor.</summary>
    public void TakeProtocol(int interfaceNumber, bool boot)
    {
        if (boot)
        {
            bootProtocol.Add(interfaceNumber);
        }
        else
        {
            bootProtocol.Remove(interfaceNumber);
        }
    }

    /// <summary>Takes what came in on an endpoint.</summary>
    /// <returns>Whether it may be a report.</returns>
    public bool TakeReport(in UsbTransfer transfer, long timeNanoseconds)
    {
        if (!states.TryGetValue(transfer.Endpoint, out var state))
        {
            states.Add(transfer.Endpoint, state = new EndpointState());
        }

        if (transfer.Type == UsbTransferType.Bulk && transfer.Data.Length > LongestBulkReport)
        {
            state.TooLong = true;
        }

        if (state.TooLong || (endpoints?.TryGetValue(transfer.Endpoint, out var stated) == true && !stated.IsHid))
        {
            return false;
        }

        state.Interval = transfer.Interval;
        state.Bulk |= transfer.Type == UsbTransferType.Bulk;
        Log.Add(timeNanoseconds, transfer.Endpoint, transfer.Data);
        return true;
    }

    /// <summary>The endpoints whose packets are reports.</summary>
    public IEnumerable<CapturedEndpoint> ReportEndpoints(UsbSpeed stated)
    {
        var speed = stated != UsbSpeed.Unknown ? stated : InferSpeed();
        return states.Where(pair => !pair.Value.TooLong)
            .Where(pair => endpoints is null || !endpoints.TryGetValue(pair.Key, out var known) || known.IsHid)
            .OrderBy(pair => pair.Key)
            .Select(pair => Endpoint(pair.Key, pair.Value, speed));
    }

    // All endpoints of a device run at one speed: what one of them leaves no doubt of holds for the others.
    private UsbSpeed InferSpeed()
    {
        UsbSpeed[] said = [.. states
            .Select(pair => endpoints?.GetValueOrDefault(pair.Key) is { IsHid: true } known ? UsbPolling.Infer(known, maxPacketOfControl, pair.Value.Interval) : UsbSpeed.Unknown)
            .Where(speed => speed != UsbSpeed.Unknown)
            .Distinct()];
        return said is [var one] ? one : UsbSpeed.Unknown;
    }

    private CapturedEndpoint Endpoint(int number, EndpointState state, UsbSpeed speed)
    {
        var known = endpoints?.GetValueOrDefault(number);
        var notes = new List<string>();
        if (state.Bulk)
        {
            notes.Add("its packets are marked as bulk transfers and taken as reports");
        }

        var boot = known is not null && bootProtocol.Contains(known.Interface);
        if (boot)
        {
            notes.Add("the host has set the boot protocol, so the report descriptor does not say what is in the reports");
        }

        return new CapturedEndpoint(
            new ReportEndpoint
            {
                Number = number,
                Transport = "usb",
                BInterval = known?.BInterval,
                MaxPacketBytes = known?.MaxPacketBytes,
                Speed = speed switch { UsbSpeed.High => "high", UsbSpeed.LowOrFull => "low-or-full", _ => null },
                DeclaredIntervalUs = known is null ? null : UsbPolling.IntervalUs(speed, known.BInterval),
            },
            known is not null && !boot ? reportDescriptors.GetValueOrDefault(known.Interface) : null,
            notes);
    }

    private sealed class EndpointState
    {
        public bool TooLong { get; set; }

        public bool Bulk { get; set; }

        public int Interval { get; set; }
    }
}
