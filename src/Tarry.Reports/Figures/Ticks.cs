namespace Tarry.Reports.Figures;

/// <summary>Round numbers along an axis: multiples of 1, 2 or 5 times a power of ten that cover a range.</summary>
/// <remarks>After P. S. Heckbert, "Nice numbers for graph labels", Graphics Gems, 1990.</remarks>
internal sealed record Ticks
{
    private Ticks(long firstMultiple, long lastMultiple, int mantissa, int exponent)
    {
        Decimals = Math.Max(0, -exponent);
        // Dividing by a whole power of ten keeps 0.3 from becoming 0.30000000000000004.
        Values = [.. Enumerable.Range(0, (int)(lastMultiple - firstMultiple) + 1)
            .Select(index => (firstMultiple + index) * mantissa)
            .Select(whole => exponent < 0 ? whole / Math.Pow(10, -exponent) : whole * Math.Pow(10, exponent))];
    }

    /// <summary>The tick values, ascending; at least two.</summary>
    public IReadOnlyList<double> Values { get; }

    /// <summary>How many decimals their labels need.</summary>
    public int Decimals { get; }

    /// <summary>The first tick, at or below the range's low end.</summary>
    public double Low => Values[0];

    /// <summary>The last tick, at or above the range's high end.</summary>
    public double High => Values[^1];

    /// <summary>Ticks that cover a range.</summary>
    /// <param name="low">The low end.</param>
    /// <param name="high">The high end; where it is not above the low end, the range is widened to one unit.</param>
    /// <param name="about">About how many steps are wanted, at least one.</param>
    public static Ticks Cover(double low, double high, int about)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(about);
        if (!(high > low))
        {
            (low, high) = (low - 0.5, low + 0.5);
        }

        var (mantissa, exponent) = RoundUp((high - low) / about);
        var step = mantissa * Math.Pow(10, exponent);
        const double rounding = 1e-9;
        var first = (long)Math.Floor((low / step) + rounding);
        var last = (long)Math.Ceiling((high / step) - rounding);
        return new(first, Math.Max(last, first + 1), mantissa, exponent);
    }

    private static (int Mantissa, int Exponent) RoundUp(double step)
    {
        var exponent = (int)Math.Floor(Math.Log10(step));
        var mantissa = step / Math.Pow(10, exponent);
        return mantissa switch
        {
            <= 1.0000001 => (1, exponent),
            <= 2.0000001 => (2, exponent),
            <= 5.0000001 => (5, exponent),
            _ => (1, exponent + 1),
        };
    }
}
