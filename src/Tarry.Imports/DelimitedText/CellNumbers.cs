using System.Globalization;

namespace Tarry.Imports.DelimitedText;

/// <summary>Reads numbers from cells, exactly.</summary>
internal static class CellNumbers
{
    private const NumberStyles Form = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
    private const int LongestNumber = 64;

    /// <summary>What reading a cell came to.</summary>
    public enum Reading
    {
        Read,
        Rounded,
        Empty,
        NotANumber,
        OutOfRange,
    }

    /// <summary>
    /// A time as whole nanoseconds. Read as a decimal number, so that no binary fraction comes between; finer than a
    /// nanosecond is rounded to the nearest, halves to even, and said so.
    /// </summary>
    public static Reading ReadNanoseconds(ReadOnlySpan<char> cell, TimeUnit unit, bool decimalComma, out long nanoseconds)
    {
        nanoseconds = 0;
        var perUnit = TimeUnits.Nanoseconds(unit);
        if (ReadDigits(cell, out var whole) && whole <= long.MaxValue / perUnit)
        {
            nanoseconds = whole * perUnit;
            return Reading.Read;
        }

        var reading = ReadDecimal(cell, decimalComma, out var value);
        if (reading != Reading.Read)
        {
            return reading;
        }

        if (Math.Abs(value) > long.MaxValue / perUnit)
        {
            return Reading.OutOfRange;
        }

        var exact = value * perUnit;
        var rounded = decimal.Round(exact);
        if (Math.Abs(rounded) > long.MaxValue)
        {
            return Reading.OutOfRange;
        }

        nanoseconds = (long)rounded;
        return rounded == exact ? Reading.Read : Reading.Rounded;
    }

    /// <summary>A whole number, as <c>12</c> or <c>12.0</c>.</summary>
    public static Reading ReadWhole(ReadOnlySpan<char> cell, bool decimalComma, long low, long high, out long whole)
    {
        whole = 0;
        if (ReadDigits(cell, out var digits))
        {
            if (digits < low || digits > high)
            {
                return Reading.OutOfRange;
            }

            whole = digits;
            return Reading.Read;
        }

        var reading = ReadDecimal(cell, decimalComma, out var value);
        if (reading != Reading.Read)
        {
            return reading;
        }

        if (value != decimal.Truncate(value))
        {
            return Reading.NotANumber;
        }

        if (value < low || value > high)
        {
            return Reading.OutOfRange;
        }

        whole = (long)value;
        return Reading.Read;
    }

    /// <summary>A decimal number; an empty cell and R's <c>NA</c> are empty.</summary>
    public static Reading ReadDecimal(ReadOnlySpan<char> cell, bool decimalComma, out decimal value)
    {
        value = 0;
        cell = cell.Trim();
        if (cell.IsEmpty || cell is "NA")
        {
            return Reading.Empty;
        }

        if (cell.Length > LongestNumber || EndsWithNul(cell))
        {
            return Reading.NotANumber;
        }

        if (decimalComma)
        {
            if (cell.Contains('.'))
            {
                return Reading.NotANumber;
            }

            Span<char> withPoint = stackalloc char[LongestNumber];
            cell.Replace(withPoint, ',', '.');
            return ReadInvariant(withPoint[..cell.Length], out value);
        }

        return ReadInvariant(cell, out value);
    }

    private static bool ReadDigits(ReadOnlySpan<char> cell, out long digits)
    {
        digits = 0;
        return !EndsWithNul(cell) && long.TryParse(cell, NumberStyles.None, CultureInfo.InvariantCulture, out digits);
    }

    /// <summary>The runtime's parsers take NUL characters behind a number as nothing; a damaged file has them.</summary>
    private static bool EndsWithNul(ReadOnlySpan<char> cell) => cell is [.., '\0'];

    private static Reading ReadInvariant(ReadOnlySpan<char> cell, out decimal value)
    {
        if (decimal.TryParse(cell, Form, CultureInfo.InvariantCulture, out value))
        {
            return Reading.Read;
        }

        // A number beyond what a decimal holds is a number all the same, and the message should not call it text.
        return double.TryParse(cell, Form, CultureInfo.InvariantCulture, out _) && cell.ContainsAnyInRange('0', '9')
            ? Reading.OutOfRange
            : Reading.NotANumber;
    }
}
