namespace Tarry.Rig.HostEvents.Watching;

/// <summary>The time from report to report, counted by whole microsecond as it comes.</summary>
/// <remarks>
/// Exact whatever the order and number: median and p99 are those of nearest rank over all intervals so far. With a typical interval T (the median): an
/// interval below T/2 is *doubled* (two reports where one was due); one of k >= 1.5 T, up to <see cref="LongestGap"/> T, has round(k/T) - 1 slots *missed*; longer
/// ones are pauses, in which the device had nothing to tell. Where the system tells changes only, a slot without a change looks missed.
/// These words describe what came; the report interval itself is estimated from recorded sessions.
/// </remarks>
public sealed class ReportIntervals
{
    /// <summary>An interval longer than so many typical ones is a pause.</summary>
    public const int LongestGap = 8;

    private const int LinearBins = 100_000;
    private readonly int[] counts = new int[LinearBins];
    private readonly SortedDictionary<long, int> beyond = [];
    private long? last;

    /// <summary>Reports so far.</summary>
    public long Reports { get; private set; }

    /// <summary>Intervals so far; one less than reports for every stretch without a loss.</summary>
    public long Count { get; private set; }

    /// <summary>Stamps that lay before the one that came before them.</summary>
    public long Backwards { get; private set; }

    /// <summary>Takes a report.</summary>
    /// <param name="stampNanoseconds">Its stamp.</param>
    /// <param name="followsALoss">Reports before it were lost, so that the time since the last one is no interval.</param>
    public void Add(long stampNanoseconds, bool followsALoss)
    {
        Reports++;
        var interval = followsALoss ? null : stampNanoseconds - last;
        last = stampNanoseconds;
        if (interval < 0)
        {
            Backwards++;
        }
        else if (interval is { } length)
        {
            Count++;
            var us = (length + 500) / 1000;
            if (us < LinearBins)
            {
                counts[us]++;
            }
            else
            {
                beyond[us] = beyond.GetValueOrDefault(us) + 1;
            }
        }
    }

    /// <summary>A quantile in microseconds; null where there is no interval.</summary>
    public long? QuantileUs(double level)
    {
        var rank = Math.Max(1, (long)Math.Ceiling(level * Count));
        foreach (var (us, count) in Lengths)
        {
            rank -= count;
            if (rank <= 0)
            {
                return us;
            }
        }

        return null;
    }

    /// <summary>How it stands.</summary>
    public ReportIntervalsSoFar SoFar()
    {
        var typical = QuantileUs(0.5);
        var (missed, doubled, pauses) = (0L, 0L, 0L);
        foreach (var (us, count) in typical is > 0 ? Lengths : [])
        {
            var slots = (double)us / typical!.Value;
            doubled += slots < 0.5 ? count : 0;
            pauses += slots > LongestGap ? count : 0;
            missed += slots is >= 1.5 and <= LongestGap ? count * ((long)Math.Round(slots) - 1) : 0;
        }

        return new ReportIntervalsSoFar(Reports, Count, typical, QuantileUs(0.99), Lengths.FirstOrDefault().Us, Lengths.LastOrDefault().Us, missed, doubled, pauses, Backwards);
    }

    /// <summary>The intervals there are, and how many of each, in order.</summary>
    public IEnumerable<(long Us, int Count)> Lengths
    {
        get
        {
            for (var us = 0; us < LinearBins; us++)
            {
                if (counts[us] > 0)
                {
                    yield return (us, counts[us]);
                }
            }

            foreach (var (us, count) in beyond)
            {
                yield return (us, count);
            }
        }
    }
}
