namespace Tarry.Imports.Recordings;

/// <summary>Which response can belong to a press.</summary>
/// <param name="ShortestMs">The shortest latency that is physically possible, ms; what is sooner is early.</param>
/// <param name="LongestMs">The longest latency to wait for, ms; without a response until then the press is missed.</param>
public readonly record struct PairingWindow(double ShortestMs, double LongestMs)
{
    /// <summary>From 0 to 500 ms.</summary>
    public static PairingWindow Default => new(0, 500);

    /// <summary>Refuses a window that cannot be one.</summary>
    /// <exception cref="ArgumentException">The latencies are negative, not in order, or above one hour.</exception>
    public void Require()
    {
        if (!(ShortestMs >= 0 && LongestMs > ShortestMs && LongestMs <= 3_600_000))
        {
            throw new ArgumentException(FormattableString.Invariant(
                $"Latencies between {ShortestMs} and {LongestMs} ms cannot be looked for; the shortest is 0 or more, the longest is more than it and at most one hour."));
        }
    }

    /// <summary>The window in whole ticks, at least one wide.</summary>
    internal (long Shortest, long Longest) Ticks(double tickHz)
    {
        Require();
        var shortest = (long)Math.Ceiling(ShortestMs * tickHz / 1000);
        return (shortest, Math.Max(shortest + 1, (long)Math.Floor(LongestMs * tickHz / 1000)));
    }
}
