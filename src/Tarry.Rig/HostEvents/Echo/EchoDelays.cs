namespace Tarry.Rig.HostEvents.Echo;

/// <summary>How long the host took from the stamp of an event to the byte handed to the driver: counts by whole microsecond.</summary>
/// <remarks>Takes no memory while it counts. Quantiles are those of nearest rank; a delay beyond the last bin is counted there, and its maximum is exact.</remarks>
public sealed class EchoDelays
{
    private const int Bins = 65_536;
    private readonly long[] counts = new long[Bins];

    /// <summary>How many.</summary>
    public long Count { get; private set; }

    /// <summary>The longest, in microseconds.</summary>
    public long MaximumUs { get; private set; }

    /// <summary>Stamps that were later than the instant at which they were read: the clock of the stamps jumped.</summary>
    public long FromTheFuture { get; private set; }

    /// <summary>Counts a delay.</summary>
    public void Add(long nanoseconds)
    {
        if (nanoseconds < 0)
        {
            FromTheFuture++;
            return;
        }

        var us = (nanoseconds + 500) / 1000;
        counts[Math.Min(us, Bins - 1)]++;
        MaximumUs = Math.Max(MaximumUs, us);
        Count++;
    }

    /// <summary>A quantile in microseconds; null where nothing was counted.</summary>
    public long? QuantileUs(double level)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(level);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(level, 1);
        var rank = Math.Max(1, (long)Math.Ceiling(level * Count));
        var seen = 0L;
        for (var us = 0; us < Bins; us++)
        {
            seen += counts[us];
            if (seen >= rank)
            {
                return us;
            }
        }

        return null;
    }

    /// <summary>The mean in microseconds; null where nothing was counted.</summary>
    public double? MeanUs => Count == 0 ? null : counts.Select((count, us) => (double)count * us).Sum() / Count;

    /// <summary>Forgets everything.</summary>
    internal void Clear()
    {
        Array.Clear(counts);
        (Count, MaximumUs, FromTheFuture) = (0, 0, 0);
    }
}
