namespace Tarry.Imports.UsbWire;

/// <summary>What was on a USB cable.</summary>
/// <param name="FileName">The file without its folder.</param>
/// <param name="Sha256">Its SHA-256, lower-case hex.</param>
/// <param name="UnitsASecond">Units of the recording in a second.</param>
/// <param name="Reports">Answered polls, in order of time.</param>
/// <param name="Polls">Polls of any device.</param>
/// <param name="BadPackets">Packets that failed a check.</param>
/// <param name="Damage">Where and why reading stopped before the end, in words; null if it did not.</param>
public sealed record UsbWireReading(
    string FileName, string Sha256, double UnitsASecond, IReadOnlyList<UsbReport> Reports, long Polls, long BadPackets, string? Damage)
{
    /// <summary>Times between one report and the next of the same device and endpoint, in microseconds, ascending.</summary>
    public IReadOnlyList<double> IntervalsMicroseconds { get; } =
    [
        .. Reports.GroupBy(report => (report.Address, report.Endpoint))
            .SelectMany(polled => polled.Zip(polled.Skip(1), (one, next) => (next.Time - one.Time) * 1e6 / UnitsASecond))
            .Order(),
    ];
}
