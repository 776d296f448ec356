namespace Tarry.Metrology;

/// <summary>A closed interval of one quantity.</summary>
/// <typeparam name="T">The quantity: <see cref="Latency"/>, <see cref="LatencyDifference"/> or <see cref="Proportion"/>.</typeparam>
public readonly record struct Interval<T>
    where T : struct, IComparable<T>
{
    /// <summary>An interval from its bounds.</summary>
    /// <exception cref="ArgumentException">The low bound is above the high bound.</exception>
    public Interval(T low, T high)
    {
        if (low.CompareTo(high) > 0)
        {
            throw new ArgumentException($"The low bound {low} is above the high bound {high}; give them in order.", nameof(low));
        }

        Low = low;
        High = high;
    }

    /// <summary>The low bound, inside the interval.</summary>
    public T Low { get; }

    /// <summary>The high bound, inside the interval.</summary>
    public T High { get; }

    /// <summary>Whether a value lies inside, bounds included.</summary>
    public bool Contains(T value) => value.CompareTo(Low) >= 0 && value.CompareTo(High) <= 0;
}
