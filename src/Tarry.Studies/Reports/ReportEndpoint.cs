namespace Tarry.Studies.Reports;

/// <summary>Where reports of a device come from: a USB endpoint, a Bluetooth channel, or a characteristic.</summary>
public sealed record ReportEndpoint
{
    /// <summary>The USB endpoint address, the L2CAP channel, or the attribute handle.</summary>
    public required int Number { get; init; }

    /// <summary><c>usb</c>, <c>bluetooth</c> (L2CAP) or <c>bluetooth-le</c> (attribute protocol); of a recording by the host <c>host-events</c> or <c>host-reports</c>.</summary>
    public required string Transport { get; init; }

    /// <summary>Whether the first byte of its reports is their id.</summary>
    public bool ReportIdIsFirstByte { get; init; }

    /// <summary>The id of its reports where that is not in their bytes; null where not known.</summary>
    public int? ReportId { get; init; }

    /// <summary><c>bInterval</c> of the USB endpoint descriptor.</summary>
    public int? BInterval { get; init; }

    /// <summary>The USB speed: <c>low-or-full</c> or <c>high</c>; null where not known.</summary>
    public string? Speed { get; init; }

    /// <summary>The polling interval that is declared: by <c>bInterval</c> and speed, or the connection interval; null where not known.</summary>
    public long? DeclaredIntervalUs { get; init; }

    /// <summary>The greatest packet that the USB endpoint descriptor allows.</summary>
    public int? MaxPacketBytes { get; init; }

    /// <summary>The HID report descriptor in lower-case hex; null where the capture does not hold it.</summary>
    public string? ReportDescriptor { get; init; }

    /// <summary>The id of a report from here; null where it has none, or it is not known.</summary>
    /// <param name="report">The report as stored.</param>
    public int? ReportIdOf(ReadOnlySpan<byte> report) =>
        !ReportIdIsFirstByte ? ReportId : report.IsEmpty ? null : report[0];
}
