using System.Globalization;
using Tarry.Findings.Shapes;
using Tarry.Metrology;

namespace Tarry.Findings.Conditions;

/// <summary>The waits of a chain, where they are known: no response is later than all of them at their longest, unless it is late.</summary>
/// <param name="FixedDelayMs">What every response takes, in milliseconds.</param>
/// <param name="ReportIntervalMs">The longest wait for a report slot, in milliseconds.</param>
/// <param name="FrameIntervalMs">The longest wait for a frame, in milliseconds.</param>
/// <param name="RefreshIntervalMs">The longest wait for the screen, in milliseconds; null where its rate is not stated.</param>
/// <param name="ScatterMs">Three standard deviations of the noise and of the places of sessions, in milliseconds.</param>
internal sealed record KnownWaits(double FixedDelayMs, double ReportIntervalMs, double FrameIntervalMs, double? RefreshIntervalMs, double ScatterMs)
{
    private const string Noise = "noise_sd_ms";
    private const double StandardDeviations = 3;

    /// <summary>The latest that a response can be without being late, in milliseconds.</summary>
    public double LatestMs => FixedDelayMs + ReportIntervalMs + FrameIntervalMs + (RefreshIntervalMs ?? 0) + ScatterMs;

    /// <summary>The definition in words.</summary>
    public string Words => "later than the fixed delay of " + Text(FixedDelayMs) + " ms + report interval of " + Text(ReportIntervalMs) + " ms"
        + " + frame of " + Text(FrameIntervalMs) + " ms"
        + (RefreshIntervalMs is { } refresh ? " + refresh of " + Text(refresh) + " ms" : "")
        + " + " + Text(ScatterMs) + " ms for noise and sessions (3 standard deviations)";

    /// <summary>The waits of a condition whose slot grid, frames, fixed delay and noise were found; null where any is missing.</summary>
    public static KnownWaits? Of(ConditionFinding condition) =>
        condition is
        {
            ReportInterval: { Interval: { } interval, FrameInterval: { } frame, FixedDelay: Estimate<Latency> delay },
            Shape: ShapeFinding shape,
        }
        && shape.Parameters.TryGetValue(Noise, out var noise)
            ? new KnownWaits(
                delay.Value.Milliseconds,
                interval.Value.Milliseconds,
                frame.Milliseconds,
                condition.Chain.RefreshRatesHz.Count == 0 ? null : 1000 / condition.Chain.RefreshRatesHz.Min(),
                StandardDeviations * Math.Sqrt((noise * noise) + Square(shape.SessionShift?.Milliseconds ?? 0)))
            : null;

    private static double Square(double value) => value * value;

    private static string Text(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
