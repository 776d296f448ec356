namespace Tarry.Findings.Sticks.Ramps;

/// <summary>Where a staircase's positions begin to move, and where they end.</summary>
/// <param name="HalfWidth">Half the distance between both sides, in per cent of level.</param>
/// <param name="Jumps">Whether a side jumps, so that it is known to half a level only.</param>
internal readonly record struct StaircaseEdge(double HalfWidth, bool Jumps)
{
    /// <summary>The dead zone about the middle level: 0 where there is none.</summary>
    public static StaircaseEdge DeadZone(double[] levels, double[] positions, double threshold)
    {
        var middle = Array.FindIndex(levels, level => level >= 0);
        var rest = positions[Math.Max(0, middle)];
        var (lower, upper) = (middle, middle);
        while (upper < levels.Length && Math.Abs(positions[upper] - rest) <= threshold)
        {
            upper++;
        }

        while (lower >= 0 && Math.Abs(positions[lower] - rest) <= threshold)
        {
            lower--;
        }

        if (upper + 1 >= levels.Length || lower < 1)
        {
            return new StaircaseEdge((levels[^1] - levels[0]) / 2, false);
        }

        // Where only the middle level itself stands, its two sides meet in it or between it and the next.
        var right = Side(levels, positions, rest, upper, 1, threshold);
        var left = Side(levels, positions, rest, lower, -1, threshold);
        return new StaircaseEdge((right.Level - left.Level) / 2, right.Jumps || left.Jumps);
    }

    /// <summary>Half the distance between the levels at which the axis reaches its ends.</summary>
    public static StaircaseEdge Saturation(double[] levels, double[] positions, double threshold)
    {
        var (top, bottom) = (levels.Length - 1, 0);
        while (top > 1 && Math.Abs(positions[top] - positions[^1]) <= threshold)
        {
            top--;
        }

        while (bottom < levels.Length - 2 && Math.Abs(positions[bottom] - positions[0]) <= threshold)
        {
            bottom++;
        }

        var right = Side(levels, positions, positions[^1], top, -1, threshold);
        var left = Side(levels, positions, positions[0], bottom, 1, threshold);
        return new StaircaseEdge((right.Level - left.Level) / 2, right.Jumps || left.Jumps);
    }

    // The line through the first moving level and the next, met with the place where the axis stands.
    private static (double Level, bool Jumps) Side(double[] levels, double[] positions, double place, int moving, int outwards, double threshold)
    {
        var (standing, next) = (moving - outwards, moving + outwards);
        if (next < 0 || next >= levels.Length || positions[next] == positions[moving])
        {
            return (levels[standing], true);
        }

        var slope = (positions[next] - positions[moving]) / (levels[next] - levels[moving]);
        var met = levels[moving] - ((positions[moving] - place) / slope);
        var slack = Math.Abs(2 * threshold / slope);
        var (low, high) = (Math.Min(levels[standing], levels[moving]) - slack, Math.Max(levels[standing], levels[moving]) + slack);
        return met >= low && met <= high ? (met, false) : ((levels[standing] + levels[moving]) / 2, true);
    }
}
