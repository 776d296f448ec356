using Tarry.Rig.HostEvents.Watching;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>A device's report intervals on one line of the error stream.</summary>
internal sealed class HostWatchLine(ProgressLine line) : IProgress<ReportIntervalsSoFar>
{
    public void Report(ReportIntervalsSoFar value) => line.Show(value is { MedianUs: { } median, P99Us: { } p99 }
        ? Invariant($"{value.Reports} reports, median {median / 1000.0:0.000} ms, p99 {p99 / 1000.0:0.000} ms, {value.Missed} missed, {value.Doubled} doubled, {value.Pauses} pauses")
        : Invariant($"{value.Reports} reports; move it"));
}
