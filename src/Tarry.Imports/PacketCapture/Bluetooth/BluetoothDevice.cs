using System.Buffers.Binary;
using Tarry.Imports.HidReports;
using Tarry.Studies.Reports;

namespace Tarry.Imports.PacketCapture.Bluetooth;

/// <summary>What a capture says of one Bluetooth device, over all its connections: its reports and what describes them.</summary>
internal sealed class BluetoothDevice(int adapter, int order)
{
    private const int LongUs = 1_250;
    private readonly Dictionary<int, ChannelState> channels = [];

    public int Adapter => adapter;

    /// <summary>Its place in the order in which the devices of the capture appear, from 1.</summary>
    public int Order => order;

    public AttributeTable Attributes { get; } = new();

    public ServiceRecords Services { get; } = new();

    public ReportLog Log { get; } = new();

    /// <summary>The connection interval in force, in microseconds; null where it was not captured, or over classic Bluetooth.</summary>
    public long? ConnectionIntervalUs { get; private set; }

    /// <summary>Takes a connection interval, in units of 1.25 ms.</summary>
    public void TakeConnectionInterval(int units) => ConnectionIntervalUs = units is >= 6 and <= 3_200 ? units * (long)LongUs : null;

    /// <summary>Takes a report of the HID profile.</summary>
    public void TakeHid(int channel, bool assumed, ReadOnlySpan<byte> report, long timeNanoseconds)
    {
        if (State(channel, attribute: false) is { } state)
        {
            state.Assumed |= assumed;
            Log.Add(timeNanoseconds, channel, report);
        }
    }

    /// <summary>Takes a value that the peripheral sent of its own accord.</summary>
    public void TakeNotification(int handle, ReadOnlySpan<byte> value, long timeNanoseconds)
    {
        // What is known to be something else, such as a battery level, is not kept; discovery comes before notifications as a rule.
        if (MayBeReport(Attributes.TypeOf(handle))
            && State(handle, attribute: true) is { } state)
        {
            state.IntervalUs = ConnectionIntervalUs;
            Log.Add(timeNanoseconds, handle, value);
        }
    }

    public IEnumerable<CapturedEndpoint> ReportEndpoints() =>
        channels.OrderBy(pair => pair.Key)
            .Select(pair => pair.Value.Attribute ? Attribute(pair.Key, pair.Value) : Channel(pair.Key, pair.Value))
            .OfType<CapturedEndpoint>();

    private static bool MayBeReport(int? type) =>
        type is null or AttributeTable.Report or AttributeTable.BootKeyboardInput or AttributeTable.BootMouseInput;

    private CapturedEndpoint Channel(int number, ChannelState state)
    {
        var descriptor = Services.ReportDescriptor;
        var usesIds = descriptor is not null && HidReportDescriptor.Parse(descriptor).UsesReportIds;
        return new CapturedEndpoint(
            new ReportEndpoint { Number = number, Transport = "bluetooth", ReportIdIsFirstByte = usesIds },
            descriptor,
            state.Assumed ? ["the connection of the channel was not captured; it is taken for HID by its first bytes"] : []);
    }

    private CapturedEndpoint? Attribute(int handle, ChannelState state)
    {
        var type = Attributes.TypeOf(handle);
        if (!MayBeReport(type))
        {
            return null;
        }

        var reference = Attributes.ReferenceOf(handle);
        return new CapturedEndpoint(
            new ReportEndpoint
            {
                Number = handle,
                Transport = "bluetooth-le",
                // The report id 0 of a reference means that the report map uses none.
                ReportId = reference is { Id: > 0 } known ? known.Id : null,
                DeclaredIntervalUs = state.IntervalUs,
            },
            type == AttributeTable.Report ? Attributes.ReportMapOf(handle) : null,
            type is null ? ["what the attribute is was not captured; its notifications are taken as reports"] : []);
    }

    /// <summary>Null where the number is that of a channel and of an attribute, which one link does not have.</summary>
    private ChannelState? State(int number, bool attribute)
    {
        if (!channels.TryGetValue(number, out var state))
        {
            channels.Add(number, state = new ChannelState(attribute));
        }

        return state.Attribute == attribute ? state : null;
    }

    private sealed class ChannelState(bool attribute)
    {
        public bool Attribute => attribute;

        public bool Assumed { get; set; }

        public long? IntervalUs { get; set; }
    }
}
