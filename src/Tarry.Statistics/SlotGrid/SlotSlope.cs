namespace Tarry.Statistics.SlotGrid;

/// <summary>The slot interval of a stream of reports as the slope of report times over slot numbers.</summary>
/// <remarks>
/// Slots are counted on from a first guess: each interval is its nearest whole number of slots, a late report's excess being taken off the next one.
/// The stream is cut into 20 blocks of consecutive reports. In each the slope b is that of the least-squares line, a gap of more than
/// 16 slots beginning a line of its own with the same slope. The estimate is the mean of the b, its 95 % interval mean +- t(19) s/sqrt(20).
/// Blocks hardly depend on each other whether errors are those of single reports (jitter about the slots) or add up (a slot clock that
/// wanders), so that the interval holds for both. Assumes jitter well below half a slot. O(n).
/// </remarks>
/// <param name="IntervalMs">The slot interval on the data's clock.</param>
/// <param name="LowMs">The low end of its 95 % interval.</param>
/// <param name="HighMs">The high end.</param>
public sealed record SlotSlope(double IntervalMs, double LowMs, double HighMs)
{
    /// <summary>The fewest reports: ten a block.</summary>
    public const int SmallestCount = 10 * Blocks;

    private const int Blocks = 20;
    private const double LongestGap = 16;
    private const double StudentQuantile = 2.093;

    /// <summary>Finds the slope.</summary>
    /// <param name="timesMs">When each report came, in milliseconds, ascending; <see cref="SmallestCount"/> or more. Finite.</param>
    /// <param name="slotMs">A first guess of the slot interval, right to some per cent.</param>
    /// <returns>Null where a block has no two slots without a long gap between them.</returns>
    /// <exception cref="ArgumentException">There are too few, one is not finite, or they are out of order.</exception>
    public static SlotSlope? Of(ReadOnlySpan<double> timesMs, double slotMs)
    {
        Argument.RequireCount(timesMs, SmallestCount, nameof(timesMs));
        Argument.RequireFinite(timesMs, nameof(timesMs));
        Argument.RequirePositive(slotMs, nameof(slotMs));
        RequireOrder(timesMs);
        var slopes = new double[Blocks];
        for (var block = 0; block < Blocks; block++)
        {
            var (from, to) = ((int)((long)block * timesMs.Length / Blocks), (int)((block + 1L) * timesMs.Length / Blocks));
            if (Slope(timesMs[from..to], slotMs) is not { } slope)
            {
                return null;
            }

            slopes[block] = slope;
        }

        var mean = slopes.Average();
        var half = StudentQuantile * Math.Sqrt(slopes.Sum(slope => (slope - mean) * (slope - mean)) / (Blocks - 1) / Blocks);
        return new SlotSlope(mean, mean - half, mean + half);
    }

    private static double? Slope(ReadOnlySpan<double> times, double slot)
    {
        var (cross, square) = (0.0, 0.0);
        var numbers = new List<double>(times.Length) { 0 };
        var (first, carried) = (0, 0.0);
        for (var index = 1; index <= times.Length; index++)
        {
            var slots = double.PositiveInfinity;
            if (index < times.Length)
            {
                // A late report shortens the next interval: what one has too much the next has too little.
                var interval = times[index] - times[index - 1] + carried;
                slots = Math.Max(0, Math.Round(interval / slot));
                carried = Math.Clamp(interval - (slots * slot), -0.3 * slot, 0.3 * slot);
            }

            if (slots <= LongestGap)
            {
                numbers.Add(numbers[^1] + slots);
                continue;
            }

            Sum(times[first..index], numbers, ref cross, ref square);
            (first, carried) = (index, 0);
            numbers.Clear();
            numbers.Add(0);
        }

        return square > 0 ? cross / square : null;
    }

    private static void Sum(ReadOnlySpan<double> times, List<double> numbers, ref double cross, ref double square)
    {
        var meanNumber = numbers.Average();
        for (var index = 0; index < times.Length; index++)
        {
            // From the first time on: of large times the differences alone are exact.
            cross += (numbers[index] - meanNumber) * (times[index] - times[0]);
            square += (numbers[index] - meanNumber) * (numbers[index] - meanNumber);
        }
    }

    private static void RequireOrder(ReadOnlySpan<double> times)
    {
        for (var index = 1; index < times.Length; index++)
        {
            if (times[index] < times[index - 1])
            {
                throw new ArgumentException($"timesMs[{index}] is {times[index]}, before {times[index - 1]}; sort the reports by time, or split them where the clock began again.", nameof(times));
            }
        }
    }
}
