using System.Globalization;

namespace Tarry.Statistics;

/// <summary>Guards of the public computations: each names the value, the allowed range and the remedy.</summary>
internal static class Argument
{
    public static void RequireLevel(double value, string name)
    {
        if (!(value > 0 && value < 1))
        {
            throw new ArgumentOutOfRangeException(name, value, $"{name} is {Text(value)}; it lies strictly between 0 and 1. Give 95 % as 0.95.");
        }
    }

    public static void RequirePositive(double value, string name)
    {
        if (!(value > 0 && double.IsFinite(value)))
        {
            throw new ArgumentOutOfRangeException(name, value, $"{name} is {Text(value)}; it must be finite and above 0.");
        }
    }

    public static void RequireNotNegative(double value, string name)
    {
        if (!(value >= 0 && double.IsFinite(value)))
        {
            throw new ArgumentOutOfRangeException(name, value, $"{name} is {Text(value)}; it must be finite and 0 or more.");
        }
    }

    public static void RequireDegreesOfFreedom(double value, string name)
    {
        if (!(value > 0))
        {
            throw new ArgumentOutOfRangeException(name, value, $"{name} is {Text(value)}; degrees of freedom lie above 0 and may be infinite. With one session there are none: run a second session.");
        }
    }

    public static void RequireAtLeast(int value, int minimum, string name, string remedy)
    {
        if (value < minimum)
        {
            throw new ArgumentOutOfRangeException(name, value, $"{name} is {value}; at least {minimum} is needed. {remedy}");
        }
    }

    public static void RequireCount(ReadOnlySpan<double> values, int minimum, string name)
    {
        if (values.Length < minimum)
        {
            throw new ArgumentException($"{name} holds {values.Length} values; at least {minimum} are needed. Check the count first and say that the data do not suffice.", name);
        }
    }

    public static void RequireFinite(ReadOnlySpan<double> values, string name)
    {
        for (var i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i]))
            {
                throw new ArgumentException($"{name}[{i}] is {Text(values[i])}; every value must be finite. Count what never arrived as missed instead.", name);
            }
        }
    }

    public static void RequireSameLength(int length, int other, string name, string otherName)
    {
        if (length != other)
        {
            throw new ArgumentException($"{name} holds {length} values and {otherName} holds {other}; give one of each for every item, in the same order.", name);
        }
    }

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
