namespace Tarry.Statistics.Distributions;

/// <summary>Newton's method that never leaves its bracket: it halves the bracket where a step would.</summary>
internal static class MonotoneRoot
{
    /// <summary>Where a function that changes sign once inside the bracket is zero.</summary>
    /// <param name="valueAndSlope">The function and its derivative.</param>
    /// <param name="low">The low end of the bracket.</param>
    /// <param name="high">The high end of the bracket.</param>
    /// <param name="increasing">Whether the function rises.</param>
    public static double Find(Func<double, (double Value, double Slope)> valueAndSlope, double low, double high, bool increasing)
    {
        var x = 0.5 * (low + high);
        for (var i = 0; i < 200; i++)
        {
            var (value, slope) = valueAndSlope(x);
            if (value == 0)
            {
                return x;
            }

            if (value > 0 == increasing)
            {
                high = x;
            }
            else
            {
                low = x;
            }

            var next = x - (value / slope);
            if (!(next > low && next < high))
            {
                next = 0.5 * (low + high);
            }

            if (Math.Abs(next - x) <= 1e-15 * Math.Abs(next))
            {
                return next;
            }

            x = next;
        }

        return x;
    }
}
