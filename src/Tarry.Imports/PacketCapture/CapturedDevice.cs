using Tarry.Studies.Reports;

namespace Tarry.Imports.PacketCapture;

/// <summary>A device of a capture that sent reports.</summary>
public sealed record CapturedDevice
{
    /// <summary>Its name in this capture: <c>usb</c> with bus and address (<c>usb1.5</c>), or <c>bt</c> with adapter and the order of appearance.</summary>
    public required string Id { get; init; }

    /// <summary>USB vendor and product id; null where the capture does not hold them.</summary>
    public string? ProductId { get; init; }

    /// <summary>Where its reports come from, by number.</summary>
    public required IReadOnlyList<CapturedEndpoint> Endpoints { get; init; }

    /// <summary>Its reports, with times in nanoseconds since 1970; endpoints that turned out to be none may be in it.</summary>
    public required ReportLog Log { get; init; }

    /// <summary>How many reports came from its endpoints.</summary>
    public required int Reports { get; init; }
}
