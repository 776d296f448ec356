using System.Globalization;

namespace Tarry.Metrology;

/// <summary>The time from a contact closing to its effect. Finite; negative only where an interval bound reaches below zero.</summary>
/// <remarks>Held in microseconds as a double: exact for every whole number of nanoseconds up to 52 days.</remarks>
public readonly record struct Latency : IComparable<Latency>
{
    private Latency(double microseconds) => Microseconds = microseconds;

    /// <summary>The latency in microseconds.</summary>
    public double Microseconds { get; }

    /// <summary>The latency in milliseconds.</summary>
    public double Milliseconds => Microseconds / 1000;

    /// <summary>A latency from microseconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Latency FromMicroseconds(double microseconds) =>
        new(Finite.Require(microseconds, nameof(microseconds)));

    /// <summary>A latency from milliseconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Latency FromMilliseconds(double milliseconds) =>
        new(Finite.Require(milliseconds, nameof(milliseconds)) * 1000);

    /// <summary>A latency from ticks of a timer.</summary>
    public static Latency FromTicks(long ticks, TimerClock clock) => new(clock.ToMicroseconds(ticks));

    /// <summary>How much later this is than <paramref name="other"/>.</summary>
    public LatencyDifference Minus(Latency other) =>
        LatencyDifference.FromMicroseconds(Microseconds - other.Microseconds);

    /// <inheritdoc/>
    public int CompareTo(Latency other) => Microseconds.CompareTo(other.Microseconds);

    /// <summary>Whether the left is earlier.</summary>
    public static bool operator <(Latency left, Latency right) => left.Microseconds < right.Microseconds;

    /// <summary>Whether the left is later.</summary>
    public static bool operator >(Latency left, Latency right) => left.Microseconds > right.Microseconds;

    /// <summary>Whether the left is not later.</summary>
    public static bool operator <=(Latency left, Latency right) => left.Microseconds <= right.Microseconds;

    /// <summary>Whether the left is not earlier.</summary>
    public static bool operator >=(Latency left, Latency right) => left.Microseconds >= right.Microseconds;

    /// <summary>The latency in milliseconds with its unit, for people.</summary>
    public override string ToString() => Milliseconds.ToString("0.000", CultureInfo.InvariantCulture) + " ms";
}
