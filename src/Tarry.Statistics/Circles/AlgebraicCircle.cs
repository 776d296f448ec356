namespace Tarry.Statistics.Circles;

/// <summary>Circles by algebraic least squares: of z = x^2 + y^2 rather than of distances, in closed form or one Newton search.</summary>
/// <remarks>
/// All minimise sum (A z + B x + C y + D)^2. Kåsa: A = 1 (I. Kåsa, IEEE Trans. Instrum. Meas. 25, 1976), drawn to small circles on
/// short arcs. Pratt: B^2 + C^2 - 4AD = 1 (V. Pratt, Comput. Graph. 21, 1987). Taubin: 4A^2 mean z + 4AB mean x + 4AC mean y + B^2 +
/// C^2 = 1 (G. Taubin, IEEE Trans. PAMI 13, 1991), of the three the least biased. Newton's search from 0 finds the least root of the
/// characteristic polynomial (N. Chernov, Circular and Linear Regression, 2010, 5.5 and 5.8). Errors are taken as alike in x and y.
/// </remarks>
public static class AlgebraicCircle
{
    /// <summary>Kåsa's circle.</summary>
    /// <param name="x">The x of each point; three or more, not on a line.</param>
    /// <param name="y">The y of each.</param>
    /// <exception cref="ArgumentException">The points are too few, not paired, not finite or on a line.</exception>
    public static Circle Kasa(ReadOnlySpan<double> x, ReadOnlySpan<double> y) => CirclePoints.Of(x, y).At(0, 0);

    /// <summary>Pratt's circle.</summary>
    /// <inheritdoc cref="Kasa"/>
    public static Circle Pratt(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var points = CirclePoints.Of(x, y);
        var quadratic = (4 * points.Determinant) - (3 * points.Z * points.Z) - points.Zz;
        var root = LeastRoot(Constant(points), Linear(points), quadratic, 0, 4);
        return points.At(root, 2 * root);
    }

    /// <summary>Taubin's circle.</summary>
    /// <inheritdoc cref="Kasa"/>
    public static Circle Taubin(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var points = CirclePoints.Of(x, y);
        var quadratic = -(3 * points.Z * points.Z) - points.Zz;
        return points.At(LeastRoot(Constant(points), Linear(points), quadratic, 4 * points.Z, 0), 0);
    }

    private static double Constant(CirclePoints of) =>
        (of.Xz * of.Xz * of.Yy) + (of.Yz * of.Yz * of.Xx) - (of.Zz * of.Determinant) - (2 * of.Xz * of.Yz * of.Xy) + (of.Z * of.Z * of.Determinant);

    private static double Linear(CirclePoints of) =>
        (of.Zz * of.Z) + (4 * of.Determinant * of.Z) - (of.Xz * of.Xz) - (of.Yz * of.Yz) - (of.Z * of.Z * of.Z);

    private static double LeastRoot(double c0, double c1, double c2, double c3, double c4)
    {
        var (root, last) = (0.0, double.PositiveInfinity);
        for (var round = 0; round < 100; round++)
        {
            var value = c0 + (root * (c1 + (root * (c2 + (root * (c3 + (root * c4)))))));
            if (Math.Abs(value) >= last)
            {
                break;
            }

            var slope = c1 + (root * ((2 * c2) + (root * ((3 * c3) + (root * 4 * c4)))));
            (root, last) = (root - (value / slope), Math.Abs(value));
        }

        return root;
    }
}
