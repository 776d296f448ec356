using Tarry.Statistics.Lines;

namespace Tarry.Statistics.Circles;

/// <summary>The ellipse that two axes of unequal gain, not at right angles, make of a circle.</summary>
/// <param name="X">The centre's x.</param>
/// <param name="Y">The centre's y.</param>
/// <param name="ReachX">How far it reaches along x: gain of x times the radius.</param>
/// <param name="ReachY">How far it reaches along y.</param>
/// <param name="Skew">By how much the angle between the axes falls short of a right angle, in radians: positive where x has a share of y.</param>
/// <remarks>
/// A stick at angle t of a circle of radius R reads x = X + gx R cos t, y = Y + gy R sin(t + e). The points fulfil
/// (p - c)' M^-1 (p - c) = 1 with M = [gx^2 R^2, gx gy R^2 sin e; ., gy^2 R^2], so that sin e = M12/sqrt(M11 M22). M comes from the
/// conic a x^2 + b xy + c y^2 + d x + e y = 1 by least squares about the points' mean. A rotation of the stick in its housing
/// does not show in it: a turned circle is the same circle.
/// </remarks>
public readonly record struct AxesEllipse(double X, double Y, double ReachX, double ReachY, double Skew)
{
    private const int SmallestCount = 6;

    /// <summary>Fits the ellipse.</summary>
    /// <param name="x">The x of each point; six or more, all round.</param>
    /// <param name="y">The y of each.</param>
    /// <returns>The ellipse, or null where the points determine none.</returns>
    /// <exception cref="ArgumentException">The points are too few, not paired or not finite.</exception>
    public static AxesEllipse? Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Argument.RequireCount(x, SmallestCount, nameof(x));
        CirclePoints.Require(x, y);
        var (meanX, meanY) = (Descriptives.Moments.Mean(x), Descriptives.Moments.Mean(y));
        var scale = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            scale += Math.Abs(x[i] - meanX) + Math.Abs(y[i] - meanY);
        }

        scale /= x.Length;
        return scale > 0 && Conic(x, y, meanX, meanY, scale) is { } conic ? Of(conic, meanX, meanY, scale) : null;
    }

    private static double[]? Conic(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double meanX, double meanY, double scale)
    {
        var matrix = new double[5, 5];
        var right = new double[5];
        Span<double> row = stackalloc double[5];
        for (var i = 0; i < x.Length; i++)
        {
            var (u, v) = ((x[i] - meanX) / scale, (y[i] - meanY) / scale);
            (row[0], row[1], row[2], row[3], row[4]) = (u * u, u * v, v * v, u, v);
            for (var j = 0; j < 5; j++)
            {
                right[j] += row[j];
                for (var k = 0; k < 5; k++)
                {
                    matrix[j, k] += row[j] * row[k];
                }
            }
        }

        return LinearEquations.Solve(matrix, right);
    }

    private static AxesEllipse? Of(double[] conic, double meanX, double meanY, double scale)
    {
        var (a, b, c, d, e) = (conic[0], conic[1], conic[2], conic[3], conic[4]);
        var determinant = (4 * a * c) - (b * b);
        if (!(determinant > 0 && a > 0))
        {
            return null;
        }

        var (centreX, centreY) = (((b * e) - (2 * c * d)) / determinant, ((b * d) - (2 * a * e)) / determinant);
        var level = 1 + (a * centreX * centreX) + (b * centreX * centreY) + (c * centreY * centreY);
        // The inverse of [a, b/2; b/2, c] / level.
        var (m11, m22, m12) = (4 * c * level / determinant, 4 * a * level / determinant, -2 * b * level / determinant);
        return level > 0
            ? new AxesEllipse(meanX + (scale * centreX), meanY + (scale * centreY), scale * Math.Sqrt(m11), scale * Math.Sqrt(m22), Math.Asin(Math.Clamp(m12 / Math.Sqrt(m11 * m22), -1, 1)))
            : null;
    }
}
