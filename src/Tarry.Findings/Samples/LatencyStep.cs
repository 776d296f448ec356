namespace Tarry.Findings.Samples;

/// <summary>The step in which latencies were recorded, where it is coarser than the timer's tick.</summary>
internal static class LatencyStep
{
    /// <summary>The greatest common divisor of the differences between the values; 0 where all are alike.</summary>
    public static long Of(IEnumerable<long> ticks)
    {
        var (step, first) = (0L, default(long?));
        foreach (var value in ticks)
        {
            first ??= value;
            var (a, b) = (step, Math.Abs(value - first.Value));
            while (b != 0)
            {
                (a, b) = (b, a % b);
            }

            step = a;
            if (step == 1)
            {
                break;
            }
        }

        return step;
    }
}
