namespace Tarry.Statistics.Densities;

/// <summary>A Gaussian kernel density estimate on an evenly spaced grid.</summary>
/// <remarks>
/// f(x) = 1/(n h) sum phi((x - x_i)/h), exact to 1e-13: each kernel is walked outward along the grid by the recurrence
/// of a Gaussian at even steps, so a trial costs one exponential and two products a grid point, and the whole is linear
/// in trials. Kernels stop at 8 bandwidths. Mass beyond the grid is not folded back.
/// </remarks>
public static class KernelDensity
{
    private const double Reach = 8;

    /// <summary>The density at <paramref name="points"/> places from <paramref name="from"/> to <paramref name="to"/>, both included.</summary>
    /// <param name="values">One or more finite values.</param>
    /// <param name="from">The first place.</param>
    /// <param name="to">The last place, above the first.</param>
    /// <param name="points">How many places, two or more.</param>
    /// <param name="bandwidth">The standard deviation of the kernel, above 0, in the unit of the values.</param>
    /// <returns>The density at each place, per unit of the values.</returns>
    /// <exception cref="ArgumentException">There is no value, or one is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The grid or the bandwidth is out of range.</exception>
    public static double[] OnGrid(ReadOnlySpan<double> values, double from, double to, int points, double bandwidth)
    {
        Argument.RequireCount(values, 1, nameof(values));
        Argument.RequireFinite(values, nameof(values));
        Argument.RequirePositive(bandwidth, nameof(bandwidth));
        Argument.RequireAtLeast(points, 2, nameof(points), "512 draws a smooth curve.");
        Argument.RequirePositive(to - from, "to - from");
        var density = new double[points];
        var step = (to - from) / (points - 1) / bandwidth;
        foreach (var value in values)
        {
            Add(density, (value - from) / bandwidth, step);
        }

        var scale = 1 / (values.Length * bandwidth * Math.Sqrt(2 * Math.PI));
        for (var i = 0; i < points; i++)
        {
            density[i] *= scale;
        }

        return density;
    }

    private static void Add(double[] density, double centre, double step)
    {
        var first = Math.Max(0, Math.Ceiling((centre - Reach) / step));
        var last = Math.Min(density.Length - 1, Math.Floor((centre + Reach) / step));
        if (first > last)
        {
            return;
        }

        var nearest = (int)Math.Clamp(Math.Round(centre / step), first, last);
        var u = (nearest * step) - centre;
        var height = Math.Exp(-0.5 * u * u);
        var shrink = Math.Exp(-step * step);
        var ratioUp = Math.Exp(-step * (u + (0.5 * step)));
        var ratioDown = Math.Exp(step * (u - (0.5 * step)));
        var value = height;
        for (var i = nearest; i <= (int)last; i++)
        {
            density[i] += value;
            value *= ratioUp;
            ratioUp *= shrink;
        }

        value = height;
        for (var i = nearest - 1; i >= (int)first; i--)
        {
            value *= ratioDown;
            ratioDown *= shrink;
            density[i] += value;
        }
    }
}
