using Tarry.Metrology;
using Tarry.Studies.Sessions;

namespace Tarry.Imports;

/// <summary>Ticks as times for other programs.</summary>
internal static class TickTime
{
    /// <summary>A tick of a segment in microseconds from the session's beginning, to the nanosecond: by the clock fit where there is one, else as stated.</summary>
    public static decimal Microseconds(Segment segment, long tick) => segment.ClockFit is { } fit
        ? Math.Round((decimal)new TimerClock(segment.TickHz, fit.RateErrorPpm).ToMicroseconds(tick), 3)
        : Math.Round(tick * 1_000_000m / segment.TickHz, 3);
}
