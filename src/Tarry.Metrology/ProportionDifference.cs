using System.Globalization;

namespace Tarry.Metrology;

/// <summary>How far two shares are apart, from -1 to 1: a - b is positive when a is the larger.</summary>
public readonly record struct ProportionDifference : IComparable<ProportionDifference>
{
    private ProportionDifference(double value) => Value = value;

    /// <summary>The difference as a fraction, -1 to 1.</summary>
    public double Value { get; }

    /// <summary>A difference from a fraction.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside -1 to 1.</exception>
    public static ProportionDifference FromFraction(double fraction) =>
        fraction is >= -1 and <= 1
            ? new(fraction)
            : throw new ArgumentOutOfRangeException(nameof(fraction), fraction, "A difference of two shares lies between -1 and 1.");

    /// <inheritdoc/>
    public int CompareTo(ProportionDifference other) => Value.CompareTo(other.Value);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(ProportionDifference left, ProportionDifference right) => left.Value < right.Value;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(ProportionDifference left, ProportionDifference right) => left.Value > right.Value;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(ProportionDifference left, ProportionDifference right) => left.Value <= right.Value;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(ProportionDifference left, ProportionDifference right) => left.Value >= right.Value;

    /// <summary>The difference in percentage points with its sign, for people.</summary>
    public override string ToString() => (Value * 100).ToString("+0.##;-0.##;0", CultureInfo.InvariantCulture) + " points";
}
