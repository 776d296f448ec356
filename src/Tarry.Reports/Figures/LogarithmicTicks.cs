namespace Tarry.Reports.Figures;

/// <summary>Round numbers on a logarithmic axis: 1, 2 and 5 times powers of ten inside a range, or where none of them falls there any half of a multiple, thinned to what it has room for.</summary>
internal static class LogarithmicTicks
{
    private static readonly double[] Coarse = [1, 2, 5];
    private static readonly double[] Fine = [1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 7.5, 8, 8.5, 9, 9.5];

    /// <summary>The ticks inside a range.</summary>
    /// <param name="low">The low end, above zero.</param>
    /// <param name="high">The high end.</param>
    /// <param name="most">The most ticks wanted, at least one.</param>
    public static IReadOnlyList<double> Inside(double low, double high, int most)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(low);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most);
        var coarse = Inside(low, high, Coarse);
        var ticks = coarse.Count > 0 ? coarse : Inside(low, high, Fine);
        var every = (ticks.Count + most - 1) / most;
        return [.. ticks.Where((_, index) => index % Math.Max(every, 1) == 0)];
    }

    private static List<double> Inside(double low, double high, double[] mantissas)
    {
        var ticks = new List<double>();
        for (var exponent = (int)Math.Floor(Math.Log10(low)); exponent <= Math.Log10(high); exponent++)
        {
            ticks.AddRange(mantissas
                .Select(mantissa => exponent < 0 ? mantissa / Math.Pow(10, -exponent) : mantissa * Math.Pow(10, exponent))
                .Where(tick => tick >= low && tick <= high));
        }

        return ticks;
    }
}
