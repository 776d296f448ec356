using Tarry.Statistics.Lines;

namespace Tarry.Statistics.Circles;

/// <summary>The largest circle inside all points: the maximum inscribed circle (MICI) of ISO 12181-1.</summary>
/// <remarks>Maximises the least distance over the centre, the distances made linear about it and the centre moved until it stays; from the least-squares centre, so of several local maxima the one there.</remarks>
public static class MaximumInscribed
{
    private const int MostRounds = 200;

    /// <summary>The circle.</summary>
    /// <param name="x">The x of each point; three or more, all round the circle.</param>
    /// <param name="y">The y of each.</param>
    /// <exception cref="ArgumentException">The points are too few, not paired, not finite, on a line, or not all round.</exception>
    public static Circle Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var circle = GeometricCircle.Fit(x, y);
        for (var round = 0; round < MostRounds; round++)
        {
            var slopes = new double[x.Length][];
            var constants = new double[x.Length];
            for (var i = 0; i < x.Length; i++)
            {
                var distance = Math.Max(circle.DistanceOf(x[i], y[i]), double.Epsilon);
                (slopes[i], constants[i]) = ([(x[i] - circle.X) / distance, (y[i] - circle.Y) / distance], -distance);
            }

            var step = Start(slopes) is { } held ? LinearMinimax.Solve(slopes, constants, held) : null;
            if (step is null)
            {
                throw new ArgumentException("The points do not lie all round a circle, so that no circle inside is largest; record whole turns.", nameof(x));
            }

            var length = Math.Sqrt((step[0] * step[0]) + (step[1] * step[1]));
            var shrink = Math.Min(1, 0.2 * circle.Radius / Math.Max(length, double.Epsilon));
            circle = circle with { X = circle.X + (shrink * step[0]), Y = circle.Y + (shrink * step[1]) };
            if (length <= 1e-14 * circle.Radius)
            {
                break;
            }
        }

        var least = double.PositiveInfinity;
        for (var i = 0; i < x.Length; i++)
        {
            least = Math.Min(least, circle.DistanceOf(x[i], y[i]));
        }

        return circle with { Radius = least };
    }

    // Three directions that hold the centre between them: a first one, and of the others the two next to its opposite.
    private static int[]? Start(double[][] slopes)
    {
        var (first, left, right) = (0, -1, -1);
        double leftTurn = double.NegativeInfinity, rightTurn = double.NegativeInfinity;
        for (var i = 1; i < slopes.Length; i++)
        {
            var cross = (slopes[first][0] * slopes[i][1]) - (slopes[first][1] * slopes[i][0]);
            var against = -((slopes[first][0] * slopes[i][0]) + (slopes[first][1] * slopes[i][1]));
            if (cross >= 0 && against > leftTurn)
            {
                (left, leftTurn) = (i, against);
            }
            else if (cross < 0 && against > rightTurn)
            {
                (right, rightTurn) = (i, against);
            }
        }

        return left < 0 || right < 0 ? null : [first, left, right];
    }
}
