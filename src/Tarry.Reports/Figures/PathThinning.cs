namespace Tarry.Reports.Figures;

/// <summary>Leaves out the points of a line that nobody would miss.</summary>
/// <remarks>After D. H. Douglas and T. K. Peucker, Cartographica 10 (1973), 112-122: what is left passes every point at no more than the tolerance.</remarks>
internal static class PathThinning
{
    /// <summary>The points that are kept, in order; both ends among them.</summary>
    /// <param name="points">The points.</param>
    /// <param name="tolerance">How far a point that is left out may lie from the line, in their unit.</param>
    public static List<(double X, double Y)> Of(IReadOnlyList<(double X, double Y)> points, double tolerance)
    {
        if (points.Count < 3)
        {
            return [.. points];
        }

        var kept = new bool[points.Count];
        kept[0] = kept[^1] = true;
        var open = new Stack<(int First, int Last)>([(0, points.Count - 1)]);
        while (open.TryPop(out var part))
        {
            var (farthest, distance) = Farthest(points, part.First, part.Last);
            if (distance > tolerance)
            {
                kept[farthest] = true;
                open.Push((part.First, farthest));
                open.Push((farthest, part.Last));
            }
        }

        return [.. points.Where((_, index) => kept[index])];
    }

    private static (int Index, double Distance) Farthest(IReadOnlyList<(double X, double Y)> points, int first, int last)
    {
        var (farthest, distance) = (first, 0.0);
        for (var index = first + 1; index < last; index++)
        {
            if (ToSegment(points[index], points[first], points[last]) is var here && here > distance)
            {
                (farthest, distance) = (index, here);
            }
        }

        return (farthest, distance);
    }

    private static double ToSegment((double X, double Y) point, (double X, double Y) from, (double X, double Y) to)
    {
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        var length = (dx * dx) + (dy * dy);
        var share = length > 0 ? Math.Clamp((((point.X - from.X) * dx) + ((point.Y - from.Y) * dy)) / length, 0, 1) : 0;
        var (x, y) = (point.X - from.X - (share * dx), point.Y - from.Y - (share * dy));
        return Math.Sqrt((x * x) + (y * y));
    }
}
