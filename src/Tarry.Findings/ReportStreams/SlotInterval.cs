using Tarry.Metrology;
using Tarry.Statistics.Quantiles;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.ReportStreams;

/// <summary>The report interval of a stream: of 200 reports or more the slope of their times over slot numbers, of fewer the median of the intervals of one slot.</summary>
/// <remarks>
/// A slot length is taken when at least nine in ten intervals (of up to 20 slots) lie within 0.15 of a multiple of it that is not 0; of
/// those that pass, the longest, since every divisor of a slot length passes too. Intervals that have no grid pass with a chance of 0.3
/// each, so that of 20 of them hardly ever nine in ten do. The median of the intervals of one slot is the slope's first guess
/// (<see cref="SlotSlope"/>), or stands itself with its exact order-statistic interval: a late report makes one interval longer and the next one shorter, which it bears.
/// </remarks>
public static class SlotInterval
{
    private const double Nearness = 0.15;
    private const double ShareOnGrid = 0.9;
    private const double LongestSlots = 20;
    private const int Many = 10_000;
    private static readonly double[] Levels = [0.5, 0.25, 0.1, 0.05];

    /// <summary>The interval, or how much is missing to tell.</summary>
    /// <param name="timesMs">Times of the reports in milliseconds, ascending.</param>
    public static EstimateOutcome<Latency> Of(ReadOnlySpan<double> timesMs)
    {
        var intervals = new double[Math.Max(0, timesMs.Length - 1)];
        for (var index = 0; index < intervals.Length; index++)
        {
            intervals[index] = timesMs[index + 1] - timesMs[index];
        }

        var slot = Slot(Thinned(intervals));
        if (slot > 0 && timesMs.Length >= Many && SlotSlope.Of(timesMs, slot) is { } slope)
        {
            return Estimate(slope.IntervalMs, slope.LowMs, slope.HighMs, MethodName.SlopeOverSlots, timesMs.Length);
        }

        Array.Sort(intervals);
        var single = slot > 0 ? Single(intervals, slot) : [];
        var needed = OrderStatisticInterval.SmallestCount(0.5);
        if (single.Length < needed)
        {
            return new NotEnough<Latency>(single.Length, needed, "report intervals of one slot on a grid");
        }

        if (timesMs.Length >= SlotSlope.SmallestCount && SlotSlope.Of(timesMs, slot) is { } line)
        {
            return Estimate(line.IntervalMs, line.LowMs, line.HighMs, MethodName.SlopeOverSlots, timesMs.Length);
        }

        var limits = OrderStatisticInterval.Of(single, 0.5);
        return Estimate(Median(single), limits.Low!.Value, limits.High!.Value, MethodName.OrderStatisticsWithinSession, single.Length);
    }

    // A first guess of the slot needs no more than some thousands of intervals.
    private static double[] Thinned(double[] intervals)
    {
        var stride = Math.Max(1, intervals.Length / Many);
        double[] some = [.. Enumerable.Range(0, intervals.Length / stride).Select(index => intervals[index * stride])];
        Array.Sort(some);
        return some;
    }

    private static double Slot(double[] intervals) => Levels
        .Where(_ => intervals.Length > 0)
        .Select(level => Refined(intervals, intervals[(int)(level * (intervals.Length - 1))]))
        .Where(candidate => candidate > 0 && IsGrid(intervals, candidate))
        .DefaultIfEmpty()
        .Max();

    private static Estimate<Latency> Estimate(double value, double low, double high, string method, int count) =>
        new(Latency.FromMilliseconds(value), new(Latency.FromMilliseconds(low), Latency.FromMilliseconds(high)), 0.95, method, count, 1);

    // The mean of the two in the middle where there is no one.
    private static double Median(double[] sorted) => SampleQuantile.Of(sorted, 0.5)!.Value;

    private static double Refined(double[] intervals, double slot)
    {
        for (var round = 0; round < 3 && slot > 0; round++)
        {
            var single = Single(intervals, slot);
            slot = single.Length == 0 ? 0 : Median(single);
        }

        return slot;
    }

    private static double[] Single(double[] sorted, double slot) =>
        [.. sorted.Where(interval => interval >= 0.5 * slot && interval < 1.5 * slot)];

    private static bool IsGrid(double[] intervals, double slot)
    {
        var (near, all) = (0, 0);
        foreach (var interval in intervals.Where(interval => interval < LongestSlots * slot))
        {
            var slots = interval / slot;
            all++;
            near += Math.Round(slots) >= 1 && Math.Abs(slots - Math.Round(slots)) <= Nearness ? 1 : 0;
        }

        return near >= ShareOnGrid * all;
    }
}
