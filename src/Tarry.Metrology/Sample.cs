namespace Tarry.Metrology;

/// <summary>
/// The latencies of one session that count for statistics, in capture order and sorted, with how many presses
/// got no response. Immutable; every value finite.
/// </summary>
public sealed class Sample
{
    private readonly double[] inOrder;
    private readonly double[] sorted;

    /// <summary>A sample from latencies in capture order.</summary>
    /// <param name="milliseconds">The latencies in milliseconds, in capture order; copied.</param>
    /// <param name="missed">How many presses got no response.</param>
    /// <exception cref="ArgumentException">A value is NaN or infinite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of misses is negative.</exception>
    public Sample(ReadOnlySpan<double> milliseconds, int missed = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(missed);
        for (var i = 0; i < milliseconds.Length; i++)
        {
            if (!double.IsFinite(milliseconds[i]))
            {
                throw new ArgumentException($"Value {i} is {milliseconds[i]}; a latency is finite, and a press without response counts as missed.", nameof(milliseconds));
            }
        }

        inOrder = milliseconds.ToArray();
        sorted = milliseconds.ToArray();
        Array.Sort(sorted);
        Missed = missed;
    }

    /// <summary>How many responses there are.</summary>
    public int Count => inOrder.Length;

    /// <summary>How many presses got no response.</summary>
    public int Missed { get; }

    /// <summary>The latencies in milliseconds, in capture order.</summary>
    public ReadOnlySpan<double> InOrder => inOrder;

    /// <summary>The latencies in milliseconds, ascending.</summary>
    public ReadOnlySpan<double> Sorted => sorted;
}
