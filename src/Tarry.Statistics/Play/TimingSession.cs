namespace Tarry.Statistics.Play;

/// <summary>The responses of one session as play needs them: when they came, and how many presses there were in all.</summary>
public sealed class TimingSession
{
    private readonly double[] sorted;

    /// <summary>A session.</summary>
    /// <param name="sorted">The latencies that arrived, in ms, ascending; copied.</param>
    /// <param name="missed">Presses without a response, which never hit.</param>
    /// <exception cref="ArgumentException">A value is not finite, or the values do not ascend.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of misses is negative, or there is no press.</exception>
    public TimingSession(ReadOnlySpan<double> sorted, int missed = 0)
    {
        Argument.RequireFinite(sorted, nameof(sorted));
        Argument.RequireNotNegative(missed, nameof(missed));
        Argument.RequireAtLeast(sorted.Length + missed, 1, nameof(sorted), "A session without a press says nothing.");
        for (var i = 1; i < sorted.Length; i++)
        {
            if (sorted[i] < sorted[i - 1])
            {
                throw new ArgumentException($"sorted[{i}] is below the value before it; sort the latencies first.", nameof(sorted));
            }
        }

        this.sorted = sorted.ToArray();
        Presses = sorted.Length + missed;
    }

    /// <summary>The latencies that arrived, ascending.</summary>
    public ReadOnlySpan<double> Sorted => sorted;

    /// <summary>How many presses there were, misses among them.</summary>
    public int Presses { get; }
}
