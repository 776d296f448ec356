using Tarry.Statistics.Quantiles;

namespace Tarry.Statistics.SlotGrid;

/// <summary>The slots of a stream of reports, from the times at which they came.</summary>
/// <remarks>
/// The slot interval is that of the straight line through report times over their slot numbers, these being counted on from the
/// median of the intervals that are one slot long: each interval is its nearest whole number of slots. Zero slots are a doubled report,
/// two and more are missed slots (or slots without a change, where a device sends only changes). The 95 % interval is that of the
/// slope with errors taken over 20 blocks (sandwich estimate), t on 19 degrees of freedom. Assumes that most reports follow one slot after
/// another and that jitter is well below half a slot. O(n log n).
/// </remarks>
/// <param name="Reports">How many reports.</param>
/// <param name="IntervalMs">The slot interval on the data's clock.</param>
/// <param name="LowMs">The low end of its 95 % interval.</param>
/// <param name="HighMs">The high end.</param>
/// <param name="JitterMs">The standard deviation of a report about its slot, slow wander of the clock taken off.</param>
/// <param name="MissedSlots">Slots without a report between the first and the last.</param>
/// <param name="DoubledReports">Reports in the slot of the one before.</param>
/// <param name="IntervalsBySlots">How many intervals were 0, 1, 2 ... slots long; the last holds all longer ones.</param>
public sealed record ReportStream(
    int Reports,
    double IntervalMs,
    double LowMs,
    double HighMs,
    double JitterMs,
    long MissedSlots,
    int DoubledReports,
    IReadOnlyList<int> IntervalsBySlots)
{
    /// <summary>The fewest reports.</summary>
    public const int SmallestCount = 100;

    private const int LongestCounted = 16;
    private const double StudentQuantile = 2.093;

    /// <summary>Analyses a stream.</summary>
    /// <param name="timesMs">When each report came, in milliseconds, ascending; <see cref="SmallestCount"/> or more. Finite.</param>
    /// <returns>Null where all reports came at once, so that there is no interval.</returns>
    /// <exception cref="ArgumentException">There are too few, one is not finite, or they are out of order.</exception>
    public static ReportStream? Of(ReadOnlySpan<double> timesMs)
    {
        Argument.RequireCount(timesMs, SmallestCount, nameof(timesMs));
        Argument.RequireFinite(timesMs, nameof(timesMs));
        var intervals = new double[timesMs.Length - 1];
        for (var i = 0; i < intervals.Length; i++)
        {
            intervals[i] = timesMs[i + 1] - timesMs[i];
            if (intervals[i] < 0)
            {
                throw new ArgumentException($"{nameof(timesMs)}[{i + 1}] is {timesMs[i + 1]}, before {timesMs[i]}; sort the reports by time, or split them where the clock began again.", nameof(timesMs));
            }
        }

        if (Typical(intervals) is not { } slot)
        {
            return null;
        }

        var (numbers, bySlots) = Number(intervals, slot);
        return Fitted(timesMs, numbers, bySlots);
    }

    // The median of the intervals about the median: one slot, doubled and missed ones left out.
    private static double? Typical(double[] intervals)
    {
        var sorted = (double[])intervals.Clone();
        Array.Sort(sorted);
        var median = SampleQuantile.Of(sorted, 0.5)!.Value;
        var near = sorted.Where(interval => interval > 0.5 * median && interval < 1.5 * median).ToArray();
        return near.Length == 0 || !(median > 0) ? null : near.Average();
    }

    private static (double[] Numbers, int[] BySlots) Number(double[] intervals, double slot)
    {
        var numbers = new double[intervals.Length + 1];
        var bySlots = new int[LongestCounted + 1];
        var sinceLast = 0.0;
        for (var i = 0; i < intervals.Length; i++)
        {
            // A late report shortens the next interval: what one has too much the next has too little.
            sinceLast += intervals[i];
            var slots = Math.Max(0, Math.Round(sinceLast / slot));
            sinceLast = Math.Clamp(sinceLast - (slots * slot), -0.3 * slot, 0.3 * slot);
            numbers[i + 1] = numbers[i] + slots;
            bySlots[(int)Math.Min(slots, LongestCounted)]++;
        }

        return (numbers, bySlots);
    }

    private static ReportStream Fitted(ReadOnlySpan<double> times, double[] numbers, int[] bySlots)
    {
        const int blocks = 20;
        var n = times.Length;
        var (meanTime, meanNumber) = (0.0, numbers.Average());
        foreach (var time in times)
        {
            meanTime += time / n;
        }

        var (cross, square) = (0.0, 0.0);
        for (var i = 0; i < n; i++)
        {
            cross += (numbers[i] - meanNumber) * (times[i] - meanTime);
            square += (numbers[i] - meanNumber) * (numbers[i] - meanNumber);
        }

        var slope = cross / square;
        var (perReport, perBlock, jitter, pairs) = (0.0, 0.0, 0.0, 0);
        var scores = new double[blocks];
        var last = 0.0;
        for (var i = 0; i < n; i++)
        {
            var residual = times[i] - meanTime - (slope * (numbers[i] - meanNumber));
            var score = (numbers[i] - meanNumber) * residual;
            perReport += score * score;
            scores[(int)((long)i * blocks / n)] += score;

            // Successive differences: twice the variance of the jitter, and hardly anything of a wander.
            jitter += i > 0 ? (residual - last) * (residual - last) / 2 : 0;
            pairs += i > 0 ? 1 : 0;
            last = residual;
        }

        perBlock = scores.Sum(score => score * score);
        var half = StudentQuantile * Math.Sqrt(Math.Max(perReport, perBlock)) / square;
        var occupied = bySlots.Skip(1).Sum() + 1L;
        return new ReportStream(
            n,
            slope,
            slope - half,
            slope + half,
            Math.Sqrt(jitter / pairs),
            (long)numbers[^1] + 1 - occupied,
            bySlots[0],
            bySlots);
    }
}
