namespace Tarry.Statistics.Alignment;

/// <summary>Where the differences between answers and presses crowd: the narrow window that holds differences of the most presses.</summary>
internal static class DifferenceWindow
{
    /// <summary>The best window of a width, and how many presses the best one apart from it holds.</summary>
    /// <param name="differences">Differences, each with the number of its press.</param>
    /// <param name="presses">How many presses there are.</param>
    /// <param name="width">The width of the window.</param>
    /// <remarks>Sorts, then passes over twice: n log n.</remarks>
    public static (double Middle, int Count, int Rival) Best(List<(double Value, int Press)> differences, int presses, double width)
    {
        differences.Sort();
        var (from, count) = Densest(differences, presses, width, double.NaN);
        var (_, rival) = Densest(differences, presses, width, from);
        var inside = differences.Where(difference => difference.Value >= from && difference.Value <= from + width).Select(difference => difference.Value).ToList();
        return (inside.Count == 0 ? 0 : inside[inside.Count / 2], count, rival);
    }

    private static (double From, int Count) Densest(List<(double Value, int Press)> differences, int presses, double width, double besides)
    {
        var held = new int[presses];
        var (from, best, distinct, first) = (0.0, 0, 0, 0);
        for (var last = 0; last < differences.Count; last++)
        {
            distinct += held[differences[last].Press]++ == 0 ? 1 : 0;
            while (differences[last].Value - differences[first].Value > width)
            {
                distinct -= --held[differences[first++].Press] == 0 ? 1 : 0;
            }

            // Windows that overlap the best one, or touch it, hold its own differences.
            if (distinct > best && !(Math.Abs(differences[first].Value - besides) < 2 * width))
            {
                (from, best) = (differences[first].Value, distinct);
            }
        }

        return (from, best);
    }
}
