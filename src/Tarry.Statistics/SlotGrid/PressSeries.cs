namespace Tarry.Statistics.SlotGrid;

/// <summary>Presses and their latencies on one unbroken clock: a session, or one segment of a session in which the rig restarted.</summary>
public sealed class PressSeries
{
    /// <summary>The fewest presses that are worth a spectrum.</summary>
    public const int SmallestCount = 100;

    /// <summary>A series from press times and latencies.</summary>
    /// <param name="sitting">The sitting: series of one sitting share the chain and its grid.</param>
    /// <param name="pressesMs">When each press came, in milliseconds on the rig's clock; ascending order is not needed. Finite.</param>
    /// <param name="latenciesMs">Its latency in milliseconds. Finite, as many as presses.</param>
    /// <exception cref="ArgumentException">The numbers differ, there are none, or one is not finite.</exception>
    public PressSeries(string sitting, ReadOnlySpan<double> pressesMs, ReadOnlySpan<double> latenciesMs)
    {
        Argument.RequireCount(pressesMs, 1, nameof(pressesMs));
        Argument.RequireSameLength(pressesMs.Length, latenciesMs.Length, nameof(pressesMs), nameof(latenciesMs));
        Argument.RequireFinite(pressesMs, nameof(pressesMs));
        Argument.RequireFinite(latenciesMs, nameof(latenciesMs));
        Sitting = sitting;
        Presses = new double[pressesMs.Length];
        Latencies = new double[pressesMs.Length];
        Arrivals = new double[pressesMs.Length];

        // Times count from the first press, so that no digits are lost to a clock that has run for days.
        OriginMs = pressesMs[0];
        var (first, last) = (0.0, 0.0);
        for (var i = 0; i < Presses.Length; i++)
        {
            Presses[i] = (pressesMs[i] - OriginMs) / 1000;
            Latencies[i] = latenciesMs[i] / 1000;
            Arrivals[i] = Presses[i] + Latencies[i];
            first = Math.Min(first, Presses[i]);
            last = Math.Max(last, Presses[i]);
        }

        Span = last - first;
        Middle = (first + last) / 2;
    }

    /// <summary>The sitting.</summary>
    public string Sitting { get; }

    /// <summary>How many presses.</summary>
    public int Count => Presses.Length;

    /// <summary>The clock's reading, in milliseconds, from which phases count: the first press.</summary>
    public double OriginMs { get; }

    /// <summary>The press time of a trial in milliseconds, on the rig's clock.</summary>
    public double PressMs(int trial) => (Presses[trial] * 1000) + OriginMs;

    /// <summary>The latency of a trial in milliseconds.</summary>
    public double LatencyMs(int trial) => Latencies[trial] * 1000;

    // All below in seconds from the first press.
    internal double[] Presses { get; }

    internal double[] Latencies { get; }

    internal double[] Arrivals { get; }

    internal double Span { get; }

    internal double Middle { get; }
}
