using Tarry.Statistics.Lines;

namespace Tarry.Statistics.Circles;

/// <summary>The two concentric circles of least separation that enclose all points: the minimum zone (MZCI) of ISO 12181-1.</summary>
/// <remarks>
/// Minimises the largest |d - R| over centre and radius. The distances are made linear about the centre, that problem is solved exactly by
/// exchange, and this is done again from the new centre until it stays. A local minimum, which for points around a circle whose
/// deviations are small against its radius is the global one. The circle returned lies midway between the two.
/// </remarks>
public static class MinimumZone
{
    private const int MostRounds = 100;

    /// <summary>The circle midway between the two.</summary>
    /// <param name="x">The x of each point; four or more, all round the circle.</param>
    /// <param name="y">The y of each.</param>
    /// <exception cref="ArgumentException">The points are too few, not paired, not finite, on a line, or not all round.</exception>
    public static Circle Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Argument.RequireCount(x, 4, nameof(x));
        var circle = GeometricCircle.Fit(x, y);
        for (var round = 0; round < MostRounds; round++)
        {
            var (slopes, constants) = Linear(circle, x, y);
            var next = LinearMinimax.Solve(slopes, constants, Start(slopes))
                ?? throw new ArgumentException("The points do not lie all round a circle, so that no zone is least; record whole turns.", nameof(x));
            // Far from the centre the linear distances no longer hold.
            var length = Math.Sqrt((next[0] * next[0]) + (next[1] * next[1]));
            var shrink = Math.Min(1, 0.2 * circle.Radius / Math.Max(length, double.Epsilon));
            circle = new Circle(circle.X + (shrink * next[0]), circle.Y + (shrink * next[1]), next[2]);
            if (length <= 1e-14 * circle.Radius)
            {
                break;
            }
        }

        var (least, greatest) = (double.PositiveInfinity, 0.0);
        for (var i = 0; i < x.Length; i++)
        {
            var distance = circle.DistanceOf(x[i], y[i]);
            (least, greatest) = (Math.Min(least, distance), Math.Max(greatest, distance));
        }

        return circle with { Radius = (least + greatest) / 2 };
    }

    // d - ux a - uy b - R, and its negative.
    private static (double[][] Slopes, double[] Constants) Linear(Circle circle, ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var slopes = new double[2 * x.Length][];
        var constants = new double[2 * x.Length];
        for (var i = 0; i < x.Length; i++)
        {
            var distance = Math.Max(circle.DistanceOf(x[i], y[i]), double.Epsilon);
            var (cosine, sine) = ((x[i] - circle.X) / distance, (y[i] - circle.Y) / distance);
            (slopes[2 * i], constants[2 * i]) = ([-cosine, -sine, -1], distance);
            (slopes[(2 * i) + 1], constants[(2 * i) + 1]) = ([cosine, sine, 1], -distance);
        }

        return (slopes, constants);
    }

    // Four points a quarter turn apart, in turn outside and inside.
    private static int[] Start(double[][] slopes)
    {
        var held = new int[4];
        for (var quarter = 0; quarter < 4; quarter++)
        {
            var (cosine, sine) = (Math.Cos(quarter * Math.PI / 2), Math.Sin(quarter * Math.PI / 2));
            var nearest = 0;
            for (var i = 2; i < slopes.Length; i += 2)
            {
                nearest = Along(slopes[i], cosine, sine) > Along(slopes[nearest], cosine, sine) ? i : nearest;
            }

            held[quarter] = nearest + (quarter % 2);
        }

        return held;
    }

    private static double Along(double[] slopes, double cosine, double sine) => -(slopes[0] * cosine) - (slopes[1] * sine);
}
