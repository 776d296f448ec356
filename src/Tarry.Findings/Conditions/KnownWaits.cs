using System.Globalization;

namespace Tarry.Findings.Conditions;

/// <summary>The waits of a chain, where they are known: no response is later than all of them at their longest, unless it is late.</summary>
/// <param name="FixedDelayMs">What every response takes, in milliseconds.</param>
/// <param name="ReportIntervalMs">The longest wait for a report slot, in milliseconds.</param>
/// <param name="FrameIntervalMs">The longest wait for a frame, in milliseconds; null where there is none.</param>
/// <param name="RefreshIntervalMs">The longest wait for the screen, in milliseconds; null where there is none.</param>
internal sealed record KnownWaits(double FixedDelayMs, double ReportIntervalMs, double? FrameIntervalMs, double? RefreshIntervalMs)
{
    /// <summary>The latest that a response can be without being late, in milliseconds.</summary>
    public double LatestMs => FixedDelayMs + ReportIntervalMs + (FrameIntervalMs ?? 0) + (RefreshIntervalMs ?? 0);

    /// <summary>The definition in words.</summary>
    public string Words => "later than the fixed delay of " + Text(FixedDelayMs) + " ms + report interval of " + Text(ReportIntervalMs) + " ms"
        + (FrameIntervalMs is { } frame ? " + frame of " + Text(frame) + " ms" : "")
        + (RefreshIntervalMs is { } refresh ? " + refresh of " + Text(refresh) + " ms" : "");

    private static string Text(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
