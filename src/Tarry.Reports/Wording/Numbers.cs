using System.Globalization;

namespace Tarry.Reports.Wording;

/// <summary>Numbers as people read them: digits that the interval supports, a true minus sign, thousands apart.</summary>
public static class Numbers
{
    /// <summary>Keeps a number and its unit on one line.</summary>
    public const char NoBreakSpace = '\u00A0';

    private const char Minus = '\u2212';
    private const int MostDecimals = 3;

    /// <summary>How many decimals leave two digits of an interval's width, from 0 to as many as make sense.</summary>
    /// <param name="width">The interval's width in the unit shown, not negative; zero gives the most.</param>
    /// <param name="most">The most that make sense; 3 unless told.</param>
    public static int Decimals(double width, int most = MostDecimals) =>
        width > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(width)), 0, most) : most;

    /// <summary>A number with a fixed count of decimals; what rounds to zero has no sign.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static string Fixed(double value, int decimals, bool withPlus = false)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "Only finite numbers are shown; use a typed outcome for what is not known.");
        }

        var digits = Math.Abs(value).ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        var isZero = digits.All(character => character is '0' or '.');
        return isZero ? digits : value < 0 ? Minus + digits : withPlus ? "+" + digits : digits;
    }

    /// <summary>A number with at most three decimals and no trailing zeros, such as a margin.</summary>
    public static string Plain(double value)
    {
        var text = Fixed(value, MostDecimals);
        return text.TrimEnd('0').TrimEnd('.');
    }

    /// <summary>A whole number, such as 6,000.</summary>
    public static string Whole(long value) => Fixed(value, 0);

    /// <summary>A count with its noun, such as <c>1 session</c> or <c>6,000 trials</c>.</summary>
    public static string Count(long value, string singular, string? plural = null) =>
        Whole(value) + NoBreakSpace + (value == 1 ? singular : plural ?? singular + "s");

    /// <summary>A confidence level or a power, such as <c>95 %</c>.</summary>
    public static string Level(double level) => Plain(level * 100) + NoBreakSpace + "%";

    /// <summary>A duration in milliseconds with its unit and no more digits than it has.</summary>
    public static string Milliseconds(double milliseconds) => Plain(milliseconds) + NoBreakSpace + "ms";

    /// <summary>A probability, such as <c>0.012</c> or <c>below 0.0001</c>.</summary>
    public static string Probability(double probability) => probability switch
    {
        < 0.0001 => "below" + NoBreakSpace + "0.0001",
        < 0.01 => Fixed(probability, 4),
        _ => Fixed(probability, 3),
    };
}
