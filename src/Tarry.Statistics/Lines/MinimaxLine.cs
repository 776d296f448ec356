namespace Tarry.Statistics.Lines;

/// <summary>The straight line whose largest deviation from points is least: Chebyshev's line.</summary>
/// <param name="Slope">The slope.</param>
/// <param name="Intercept">The value at 0.</param>
/// <param name="Deviation">The largest deviation, to either side.</param>
/// <remarks>Deviations are along y. In linearity testing it is the line of "independent linearity" that is told by the largest error.</remarks>
public readonly record struct MinimaxLine(double Slope, double Intercept, double Deviation)
{
    /// <summary>Fits the line.</summary>
    /// <param name="x">Where; ascending, at least three that differ.</param>
    /// <param name="y">What was observed there; as many.</param>
    /// <exception cref="ArgumentException">The points are too few, not paired, not in order or not finite.</exception>
    public static MinimaxLine Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Argument.RequireCount(x, 3, nameof(x));
        Argument.RequireSameLength(x.Length, y.Length, nameof(x), nameof(y));
        Argument.RequireFinite(x, nameof(x));
        Argument.RequireFinite(y, nameof(y));
        var slopes = new double[2 * x.Length][];
        var constants = new double[2 * x.Length];
        for (var i = 0; i < x.Length; i++)
        {
            if (i > 0 && !(x[i] > x[i - 1]))
            {
                throw new ArgumentException($"x[{i}] is not above the one before it; give the points in order, one a place.", nameof(x));
            }

            (slopes[2 * i], constants[2 * i]) = ([-x[i], -1], y[i]);
            (slopes[(2 * i) + 1], constants[(2 * i) + 1]) = ([x[i], 1], -y[i]);
        }

        // The middle point's deviation is opposite to those of the ends.
        var found = LinearMinimax.Solve(slopes, constants, [0, (2 * (x.Length / 2)) + 1, 2 * (x.Length - 1)])
            ?? throw new ArgumentException("The points do not determine a line; give finite places that differ.", nameof(x));
        var largest = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            largest = Math.Max(largest, Math.Abs(y[i] - found[1] - (found[0] * x[i])));
        }

        return new MinimaxLine(found[0], found[1], largest);
    }

    /// <summary>The line at a place.</summary>
    public double At(double x) => Intercept + (Slope * x);
}
