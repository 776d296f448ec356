namespace Tarry.Rig.HostEvents;

/// <summary>Clocks in words.</summary>
public static class InputClockWords
{
    /// <summary>Which clock, for people and for the record.</summary>
    public static string InWords(this InputClock clock) => clock switch
    {
        InputClock.KernelMonotonic => "kernel, CLOCK_MONOTONIC",
        InputClock.KernelRealtime => "kernel, CLOCK_REALTIME",
        _ => "arrival at the program, monotonic clock",
    };

    /// <summary>The present instant of a clock, in its nanoseconds.</summary>
    /// <param name="clock">Which.</param>
    /// <param name="time">The host's clocks. On Linux the timestamps of <see cref="TimeProvider.System"/> are CLOCK_MONOTONIC.</param>
    public static long Now(this InputClock clock, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        return clock == InputClock.KernelRealtime
            ? (time.GetUtcNow() - DateTimeOffset.UnixEpoch).Ticks * 100
            : (long)((Int128)time.GetTimestamp() * 1_000_000_000 / time.TimestampFrequency);
    }
}
