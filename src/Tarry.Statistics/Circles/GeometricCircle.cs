namespace Tarry.Statistics.Circles;

/// <summary>The circle whose distances to points have the least sum of squares: the least-squares reference circle (LSCI) of ISO 12181-1.</summary>
/// <remarks>
/// Minimises sum (d - R)^2 over centre and radius, d the distance from the centre. Newton's steps, damped after Levenberg and Marquardt, from
/// Taubin's circle. With normal errors alike in all directions it is the circle of greatest likelihood (W. Gander, G. H. Golub,
/// R. Strebel, BIT 34, 1994).
/// </remarks>
public static class GeometricCircle
{
    private const double Smallest = 1e-15;

    /// <summary>The circle.</summary>
    /// <param name="x">The x of each point; three or more, not on a line.</param>
    /// <param name="y">The y of each.</param>
    /// <exception cref="ArgumentException">The points are too few, not paired, not finite or on a line.</exception>
    public static Circle Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var circle = AlgebraicCircle.Taubin(x, y);
        circle = circle with { Radius = MeanDistance(circle, x, y) };
        var (damping, squares) = (1e-3, Squares(circle, x, y));
        for (var round = 0; round < 500; round++)
        {
            if (Step(circle, damping, x, y) is not { } next)
            {
                damping = Math.Max(10 * damping, 1e-12);
                continue;
            }

            next = next with { Radius = MeanDistance(next, x, y) };
            var better = Squares(next, x, y);
            var moved = Math.Abs(next.X - circle.X) + Math.Abs(next.Y - circle.Y);
            if (better <= squares)
            {
                (circle, squares, damping) = (next, better, damping / 10);
            }
            else
            {
                damping = Math.Max(10 * damping, 1e-12);
            }

            if (moved <= Smallest * (circle.Radius + Math.Abs(circle.X) + Math.Abs(circle.Y)) || damping > 1e12)
            {
                break;
            }
        }

        return circle;
    }

    /// <summary>The sum of squared deviations of points from a circle.</summary>
    /// <param name="circle">The circle.</param>
    /// <param name="x">The x of each point.</param>
    /// <param name="y">The y of each.</param>
    public static double Squares(Circle circle, ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var sum = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            var deviation = circle.DeviationOf(x[i], y[i]);
            sum += deviation * deviation;
        }

        return sum;
    }

    private static double MeanDistance(Circle circle, ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var sum = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            sum += circle.DistanceOf(x[i], y[i]);
        }

        return sum / x.Length;
    }

    // The radius is the mean distance at every centre, so that two unknowns are left: F(a, b) = sum d^2 - (sum d)^2/n.
    private static Circle? Step(Circle circle, double damping, ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double ux = 0, uy = 0, gx = 0, gy = 0, xx = 0, xy = 0, yy = 0;
        for (var i = 0; i < x.Length; i++)
        {
            var distance = circle.DistanceOf(x[i], y[i]);
            if (distance == 0)
            {
                continue;
            }

            var (cosine, sine) = ((x[i] - circle.X) / distance, (y[i] - circle.Y) / distance);
            var deviation = distance - circle.Radius;
            ux += cosine;
            uy += sine;
            gx -= deviation * cosine;
            gy -= deviation * sine;
            // The second derivative of a distance bends the sum where the deviations are large.
            xx += (cosine * cosine) + (deviation * sine * sine / distance);
            yy += (sine * sine) + (deviation * cosine * cosine / distance);
            xy += (cosine * sine) - (deviation * cosine * sine / distance);
        }

        var n = x.Length;
        xx += (damping * n) - (ux * ux / n);
        yy += (damping * n) - (uy * uy / n);
        xy -= ux * uy / n;
        var determinant = (xx * yy) - (xy * xy);
        return determinant > 0 && xx > 0
            ? circle with { X = circle.X - (((gx * yy) - (gy * xy)) / determinant), Y = circle.Y - (((gy * xx) - (gx * xy)) / determinant) }
            : null;
    }
}
