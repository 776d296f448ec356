using Tarry.Imports.PacketCapture.Bluetooth;
using Tarry.Imports.PacketCapture.Files;
using Tarry.Imports.PacketCapture.Usb;

namespace Tarry.Imports.PacketCapture;

/// <summary>What a packet capture holds of input devices: each device with its reports, in one pass over the file.</summary>
/// <remarks>
/// Memory is bounded by the reports that are kept, some 30 bytes each and their own, and one buffer. Devices are told apart by bus and address,
/// or by Bluetooth address; a capture that holds the same bus twice has each report twice.
/// </remarks>
public sealed record InputCapture
{
    private const int PacketsBetweenReports = 65_536;

    /// <summary>The devices that sent reports.</summary>
    public required IReadOnlyList<CapturedDevice> Devices { get; init; }

    /// <summary>Packets in the file.</summary>
    public required long Packets { get; init; }

    /// <summary>How many packets of each link type were passed over because it is not read.</summary>
    public required IReadOnlyDictionary<int, long> PassedOver { get; init; }

    /// <summary>What was found wrong.</summary>
    public required CaptureDefects Defects { get; init; }

    /// <summary>The time of the first packet, in nanoseconds since 1970; null where there is none.</summary>
    public required long? FirstNanoseconds { get; init; }

    /// <summary>Whether times are since 1970, as in a host's capture; else they are since the recording began.</summary>
    public bool IsDated { get; init; } = true;

    /// <summary>Whether every time is a whole microsecond.</summary>
    public required bool WholeMicroseconds { get; init; }

    /// <summary>Whether times finer than a nanosecond were rounded.</summary>
    public required bool RoundedToNanoseconds { get; init; }

    /// <summary>How many packets are earlier than the one before.</summary>
    public required long Backwards { get; init; }

    /// <summary>Reads a capture to its end, or to where it is damaged.</summary>
    /// <param name="stream">The file, from its first byte; it is left open.</param>
    /// <param name="speed">The speed of USB devices where the user knows it and the capture does not say.</param>
    /// <param name="progress">Told the packets and bytes read, about every 65,536 packets.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>Null where the file is of no format that is read.</returns>
    public static InputCapture? Read(
        Stream stream, UsbSpeed speed = UsbSpeed.Unknown, Action<long, long>? progress = null, CancellationToken cancellation = default)
    {
        var reader = CaptureReader.Open(stream);
        if (reader is null)
        {
            return null;
        }

        var usb = new UsbTransfers(reader.Defects);
        var bluetooth = new BluetoothTraffic(reader.Defects);
        var passedOver = new Dictionary<int, long>();
        var (first, latest, backwards, remainders) = (default(long?), long.MinValue, 0L, 0L);
        while (reader.Read(out var packet))
        {
            first ??= packet.TimeNanoseconds;
            backwards += packet.TimeNanoseconds < latest ? 1 : 0;
            latest = packet.TimeNanoseconds;
            remainders |= packet.TimeNanoseconds % 1_000;
            if (UsbTransfers.Reads(packet.LinkType))
            {
                usb.Take(packet);
            }
            else if (HciFraming.Reads(packet.LinkType))
            {
                bluetooth.Take(packet);
            }
            else
            {
                passedOver[packet.LinkType] = passedOver.GetValueOrDefault(packet.LinkType) + 1;
            }

            if (reader.Packets % PacketsBetweenReports == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Invoke(reader.Packets, reader.Offset);
            }
        }

        return new InputCapture
        {
            Devices = [.. usb.Devices.Select(device => Of(device, speed)).Concat(bluetooth.Devices.Select(Of)).Where(device => device.Reports > 0)],
            Packets = reader.Packets,
            PassedOver = passedOver,
            Defects = reader.Defects,
            FirstNanoseconds = first,
            WholeMicroseconds = remainders == 0,
            RoundedToNanoseconds = reader.RoundedToNanoseconds,
            Backwards = backwards,
        };
    }

    internal static CapturedDevice Of(UsbDevice device, UsbSpeed speed)
    {
        var endpoints = device.ReportEndpoints(speed).Select(WithIds).ToList();
        return new CapturedDevice
        {
            Id = FormattableString.Invariant($"usb{device.Bus}.{device.Address}"),
            ProductId = device.ProductId,
            Endpoints = endpoints,
            Log = device.Log,
            Reports = CountOf(device.Log, endpoints),
        };
    }

    private static CapturedDevice Of(BluetoothDevice device)
    {
        var endpoints = device.ReportEndpoints().ToList();
        return new CapturedDevice
        {
            Id = FormattableString.Invariant($"bt{device.Adapter}.{device.Order}"),
            Endpoints = endpoints,
            Log = device.Log,
            Reports = CountOf(device.Log, endpoints),
        };
    }

    private static CapturedEndpoint WithIds(CapturedEndpoint endpoint) => endpoint with
    {
        Endpoint = endpoint.Endpoint with
        {
            ReportIdIsFirstByte = endpoint.Descriptor is not null && HidReports.HidReportDescriptor.Parse(endpoint.Descriptor).UsesReportIds,
        },
    };

    private static int CountOf(Studies.Reports.ReportLog log, List<CapturedEndpoint> endpoints) =>
        endpoints.Select(endpoint => endpoint.Endpoint.Number).Distinct().Sum(log.CountOf);
}
