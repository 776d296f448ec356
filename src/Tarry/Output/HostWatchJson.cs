using System.Text.Json;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Watching;

namespace Tarry.Output;

/// <summary>A device's report intervals as JSON, a line each.</summary>
internal sealed class HostWatchJson(Terminal terminal, IHostInputDevice device) : IProgress<ReportIntervalsSoFar>
{
    private static readonly JsonSerializerOptions Options = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    public void Report(ReportIntervalsSoFar value)
    {
        terminal.Out.WriteLine(JsonSerializer.Serialize(
            new
            {
                Device = device.Description.Path,
                Clock = device.Clock.InWords(),
                value.Reports,
                value.Intervals,
                value.MedianUs,
                p99_us = value.P99Us,
                ShortestUs = value.Intervals > 0 ? value.ShortestUs : (long?)null,
                LongestUs = value.Intervals > 0 ? value.LongestUs : (long?)null,
                value.Missed,
                value.Doubled,
                value.Pauses,
                value.Backwards,
                device.Losses,
            },
            Options));
        terminal.Out.Flush();
    }
}
