namespace Tarry.Statistics.Circles;

/// <summary>The smallest circle that encloses all points: the minimum circumscribed circle (MCCI) of ISO 12181-1.</summary>
/// <remarks>Built up point by point (E. Welzl, Lecture Notes in Computer Science 555, 1991), in the order given, which settles the result to the bit.</remarks>
public static class MinimumCircumscribed
{
    private const double Rounding = 1e-12;

    /// <summary>The circle.</summary>
    /// <param name="x">The x of each point; three or more.</param>
    /// <param name="y">The y of each.</param>
    /// <exception cref="ArgumentException">The points are too few, not paired or not finite.</exception>
    public static Circle Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        CirclePoints.Require(x, y);
        var circle = new Circle(x[0], y[0], 0);
        for (var i = 1; i < x.Length; i++)
        {
            if (Inside(circle, x[i], y[i]))
            {
                continue;
            }

            circle = new Circle(x[i], y[i], 0);
            for (var j = 0; j < i; j++)
            {
                if (Inside(circle, x[j], y[j]))
                {
                    continue;
                }

                circle = Through(x[i], y[i], x[j], y[j]);
                for (var k = 0; k < j; k++)
                {
                    circle = Inside(circle, x[k], y[k]) ? circle : Through(x[i], y[i], x[j], y[j], x[k], y[k]);
                }
            }
        }

        return circle;
    }

    private static bool Inside(Circle circle, double x, double y) => circle.DistanceOf(x, y) <= circle.Radius * (1 + Rounding);

    private static Circle Through(double ax, double ay, double bx, double by)
    {
        var middle = new Circle((ax + bx) / 2, (ay + by) / 2, 0);
        return middle with { Radius = middle.DistanceOf(ax, ay) };
    }

    private static Circle Through(double ax, double ay, double bx, double by, double cx, double cy)
    {
        var (px, py, qx, qy) = (bx - ax, by - ay, cx - ax, cy - ay);
        var twice = 2 * ((px * qy) - (py * qx));
        var (p, q) = ((px * px) + (py * py), (qx * qx) + (qy * qy));
        var centre = new Circle(ax + (((qy * p) - (py * q)) / twice), ay + (((px * q) - (qx * p)) / twice), 0);
        return centre with { Radius = centre.DistanceOf(ax, ay) };
    }
}
