namespace Tarry.Statistics.Densities;

/// <summary>A Gaussian kernel density estimate on an evenly spaced grid.</summary>
/// <remarks>
/// f(x) = 1/(n h) sum phi((x - x_i)/h), exact to 1e-12 of its height: each kernel is walked outward along the grid, four
/// places at a time, by the recurrence of a Gaussian at even steps, so a trial costs a few exponentials and two products a
/// place, and the whole is linear in trials. Kernels stop at 8 bandwidths. Mass beyond the grid is not folded back. The
/// blocks of four are part of the method, so that the result is the same to the bit on every machine.
/// </remarks>
public static class KernelDensity
{
    private const double Reach = 8;
    private const int Block = KernelWalk.Block;

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
        var step = (to - from) / (points - 1) / bandwidth;
        var padded = new double[points + (2 * Block)];
        var walk = new KernelWalk(step);
        foreach (var value in values)
        {
            var centre = (value - from) / bandwidth;
            var first = Math.Max(0, Math.Ceiling((centre - Reach) / step));
            var last = Math.Min(points - 1, Math.Floor((centre + Reach) / step));
            if (first > last)
            {
                continue;
            }

            if (step > 1)
            {
                AddOneByOne(padded, centre, step, (int)first, (int)last);
            }
            else
            {
                walk.Add(padded, centre, (int)first, (int)last);
            }
        }

        var scale = 1 / (values.Length * bandwidth * Math.Sqrt(2 * Math.PI));
        var density = padded[Block..^Block];
        for (var i = 0; i < density.Length; i++)
        {
            density[i] *= scale;
        }

        return density;
    }

    private static void AddOneByOne(double[] padded, double centre, double step, int first, int last)
    {
        for (var i = first; i <= last; i++)
        {
            var u = (i * step) - centre;
            padded[i + Block] += Math.Exp(-0.5 * u * u);
        }
    }
}
