using System.Globalization;

namespace Tarry.Metrology;

/// <summary>A share of trials, from 0 to 1.</summary>
public readonly record struct Proportion : IComparable<Proportion>
{
    private Proportion(double value) => Value = value;

    /// <summary>The share as a fraction, 0 to 1.</summary>
    public double Value { get; }

    /// <summary>A share from a fraction.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside 0 to 1.</exception>
    public static Proportion FromFraction(double fraction) =>
        fraction is >= 0 and <= 1
            ? new(fraction)
            : throw new ArgumentOutOfRangeException(nameof(fraction), fraction, "A share lies between 0 and 1.");

    /// <inheritdoc/>
    public int CompareTo(Proportion other) => Value.CompareTo(other.Value);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Proportion left, Proportion right) => left.Value < right.Value;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Proportion left, Proportion right) => left.Value > right.Value;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Proportion left, Proportion right) => left.Value <= right.Value;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Proportion left, Proportion right) => left.Value >= right.Value;

    /// <summary>The share in percent, for people.</summary>
    public override string ToString() => (Value * 100).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}
