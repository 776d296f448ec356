using Tarry.Rig.Runs;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>A run's standing on one line of the error stream.</summary>
internal sealed class RunProgressLine(ProgressLine line) : IProgress<RunProgress>
{
    public void Report(RunProgress value) => line.Show(value.Phase switch
    {
        RunPhase.WaitingForRig => "the rig is gone; waiting for it to come back (all captured trials are safe)",
        RunPhase.Running or RunPhase.Stopping => Running(value),
        _ => value.Phase.ToString().ToLowerInvariant(),
    });

    private static string Running(RunProgress value)
    {
        var mean = value is { MeanMs: { } center, HalfWidthMs: { } half }
            ? Invariant($", mean {center:0.000} +- {half:0.000} ms (95 %, within this session)")
            : "";
        var remaining = value.Remaining is { } time ? Invariant($", {(long)time.TotalHours}:{time:mm\\:ss} to go") : "";
        return Invariant($"{value.Key}: {value.CapturedOnDisk} on disk, {value.Missed} missed, {value.Early} early, {value.Refused} refused{mean}{remaining}");
    }
}
