using System.Globalization;

namespace Tarry.Metrology;

/// <summary>
/// How far two latencies are apart, or how much a latency varies (standard deviation, spread).
/// A difference a - b is positive when a is slower. Finite.
/// </summary>
public readonly record struct LatencyDifference : IComparable<LatencyDifference>
{
    private LatencyDifference(double microseconds) => Microseconds = microseconds;

    /// <summary>The difference in microseconds.</summary>
    public double Microseconds { get; }

    /// <summary>The difference in milliseconds.</summary>
    public double Milliseconds => Microseconds / 1000;

    /// <summary>A difference from microseconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static LatencyDifference FromMicroseconds(double microseconds) =>
        new(Finite.Require(microseconds, nameof(microseconds)));

    /// <summary>A difference from milliseconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static LatencyDifference FromMilliseconds(double milliseconds) =>
        new(Finite.Require(milliseconds, nameof(milliseconds)) * 1000);

    /// <inheritdoc/>
    public int CompareTo(LatencyDifference other) => Microseconds.CompareTo(other.Microseconds);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(LatencyDifference left, LatencyDifference right) => left.Microseconds < right.Microseconds;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(LatencyDifference left, LatencyDifference right) => left.Microseconds > right.Microseconds;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(LatencyDifference left, LatencyDifference right) => left.Microseconds <= right.Microseconds;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(LatencyDifference left, LatencyDifference right) => left.Microseconds >= right.Microseconds;

    /// <summary>The difference in milliseconds with sign and unit, for people.</summary>
    public override string ToString() => Milliseconds.ToString("+0.000;-0.000;0.000", CultureInfo.InvariantCulture) + " ms";
}
