namespace Tarry.Findings.Sticks.Recordings;

/// <summary>The stretches in which a quantity goes one way, hesitations forgiven.</summary>
internal static class Stretches
{
    /// <summary>First and last index of each stretch.</summary>
    /// <param name="values">The quantity.</param>
    /// <param name="counts">Whether a value counts; a stretch ends where one does not.</param>
    /// <param name="turnsBack">A stretch ends where the quantity has come back by more than this.</param>
    public static IEnumerable<(int From, int To)> Of(double[] values, Func<int, bool> counts, double turnsBack)
    {
        var i = 0;
        while (i < values.Length)
        {
            if (!counts(i))
            {
                i++;
                continue;
            }

            // Both extremes are followed until the quantity is back from one of them by more than it hesitates.
            var (low, high, direction) = (i, i, 0);
            for (; i < values.Length && counts(i); i++)
            {
                (low, high, direction) = Followed(values, i, low, high, direction, turnsBack);
                if ((direction > 0 && values[high] - values[i] > turnsBack) || (direction < 0 && values[i] - values[low] > turnsBack))
                {
                    break;
                }
            }

            if (direction != 0)
            {
                yield return direction > 0 ? (low, high) : (high, low);
                i = i < values.Length && counts(i) ? Math.Max(low, high) : i;
            }
        }
    }

    // Before the direction is known the later of equal starts counts, after it the later of equal ends.
    private static (int Low, int High, int Direction) Followed(double[] values, int i, int low, int high, int direction, double turnsBack)
    {
        low = direction <= 0 && values[i] <= values[low] ? i : low;
        high = direction >= 0 && values[i] >= values[high] ? i : high;
        if (direction == 0)
        {
            direction = values[i] - values[low] > turnsBack ? 1 : values[high] - values[i] > turnsBack ? -1 : 0;
        }

        return (low, high, direction);
    }
}
