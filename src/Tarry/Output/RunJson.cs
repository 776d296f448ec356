using System.Text.Json;
using Tarry.Rig.Runs;

namespace Tarry.Output;

/// <summary>A run's standing as JSON, a line each: what a script follows.</summary>
internal sealed class RunJson(Terminal terminal) : IProgress<RunProgress>
{
    private static readonly JsonSerializerOptions Options = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    public void Report(RunProgress value)
    {
        terminal.Out.WriteLine(JsonSerializer.Serialize(
            new
            {
                Session = value.Key,
                Phase = JsonNamingPolicy.SnakeCaseLower.ConvertName(value.Phase.ToString()),
                value.CapturedOnDisk,
                value.Responses,
                value.Missed,
                value.Early,
                value.Refused,
                value.MeanMs,
                value.HalfWidthMs,
                RemainingS = value.Remaining?.TotalSeconds,
                value.Health.Board,
                value.Health.Firmware,
                value.Health.BootId,
                value.Health.BadFramesAtHost,
                value.Health.BadFramesAtRig,
                value.Health.TrialsSentAgain,
                value.Health.Restarts,
                value.Health.Reconnections,
                ClockRateErrorPpm = value.Health.Clock?.RateErrorPpm,
            },
            Options));
        terminal.Out.Flush();
    }
}
