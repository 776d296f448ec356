namespace Tarry.Findings.ReportStreams;

/// <summary>What came of the slots of a report stream.</summary>
/// <param name="Filled">Intervals of one slot.</param>
/// <param name="Missed">Slots without a report, in gaps of up to 16 slots. A device that reports only changes leaves slots empty without fault.</param>
/// <param name="Pauses">Gaps of more than 16 slots.</param>
/// <param name="Doubled">Reports less than half a slot after the one before.</param>
/// <param name="JitterMs">Standard deviation of the intervals of one slot, in milliseconds; null for fewer than two.</param>
public sealed record SlotCounts(int Filled, int Missed, int Pauses, int Doubled, double? JitterMs)
{
    private const double LongestGap = 16;

    /// <summary>Counts the slots between reports.</summary>
    /// <param name="intervalsMs">Times between reports, in milliseconds.</param>
    /// <param name="slotMs">The report interval, in milliseconds.</param>
    public static SlotCounts Of(ReadOnlySpan<double> intervalsMs, double slotMs)
    {
        int filled = 0, missed = 0, pauses = 0, doubled = 0;
        double sum = 0, squares = 0;
        foreach (var interval in intervalsMs)
        {
            switch (Math.Round(interval / slotMs))
            {
                case < 1:
                    doubled++;
                    break;
                case 1:
                    filled++;
                    // Differences from the slot keep the sum of squares exact.
                    sum += interval - slotMs;
                    squares += (interval - slotMs) * (interval - slotMs);
                    break;
                case <= LongestGap and var slots:
                    missed += (int)slots - 1;
                    break;
                default:
                    pauses++;
                    break;
            }
        }

        var variance = filled < 2 ? (double?)null : Math.Max(0, squares - (sum * sum / filled)) / (filled - 1);
        return new SlotCounts(filled, missed, pauses, doubled, variance is { } value ? Math.Sqrt(value) : null);
    }
}
