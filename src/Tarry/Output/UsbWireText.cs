using Tarry.Imports.UsbWire;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>What was on a USB cable, in words.</summary>
internal static class UsbWireText
{
    private const int ShownReports = 20;

    public static void Write(UsbWireReading reading, Terminal terminal, bool explain)
    {
        terminal.Out.WriteLine(Invariant($"{reading.FileName}: {Counted.Of(reading.Reports.Count, "report")} in {Counted.Of(reading.Polls, "poll")}, {Counted.Of(reading.BadPackets, "bad packet")}."));
        var intervals = reading.IntervalsMicroseconds;
        if (intervals.Count > 0)
        {
            terminal.Out.WriteLine(Invariant(
                $"  time between reports: median {intervals[intervals.Count / 2] / 1000:0.000} ms, from {intervals[0]:0.0} to {intervals[^1]:0.0} us"));
        }

        if (explain)
        {
            foreach (var report in reading.Reports.Take(ShownReports))
            {
                terminal.Out.WriteLine(Invariant($"  {report.Time / reading.UnitsASecond:0.000000} s, address {report.Address} endpoint {report.Endpoint}: {string.Join(' ', report.Payload.Select(value => Invariant($"{value:x2}")))}"));
            }

            if (reading.Reports.Count > ShownReports)
            {
                terminal.Out.WriteLine(Invariant($"  and {reading.Reports.Count - ShownReports} more"));
            }
        }

        if (reading.Damage is { } damage)
        {
            terminal.Error.WriteLine($"{damage} What came before is shown.");
        }
    }
}
