namespace Tarry.Statistics.Censoring;

/// <summary>The intervals that can hold probability, and which of them each value covers.</summary>
internal sealed class InnermostIntervals
{
    private InnermostIntervals(List<double> lows, List<double> highs, (int First, int Last, double Count)[] covered) =>
        (Lows, Highs, Covered) = (lows, highs, covered);

    public List<double> Lows { get; }

    public List<double> Highs { get; }

    /// <summary>Alike values together: the first and last interval that they cover, and how many they are.</summary>
    public (int First, int Last, double Count)[] Covered { get; }

    public static InnermostIntervals Of(IReadOnlyList<CensoredValue> values)
    {
        // At one place: an exact value begins, then intervals end, then intervals begin, since they hold their high bound and not their low one.
        var ends = new List<(double At, int Rank, bool IsLow)>(2 * values.Count);
        foreach (var value in values)
        {
            ends.Add((value.Low, value.Low == value.High ? 0 : 2, true));
            ends.Add((value.High, 1, false));
        }

        ends.Sort((left, right) => left.At != right.At ? left.At.CompareTo(right.At) : left.Rank.CompareTo(right.Rank));
        var (lows, highs, ranks) = (new List<double>(), new List<double>(), new List<int>());
        for (var index = 0; index + 1 < ends.Count; index++)
        {
            if (ends[index].IsLow && !ends[index + 1].IsLow)
            {
                lows.Add(ends[index].At);
                ranks.Add(ends[index].Rank);
                highs.Add(ends[index + 1].At);
            }
        }

        var covered = values.GroupBy(value => value)
            .Select(group => (First: FirstInside(group.Key, lows, ranks), Last: LastInside(group.Key, highs), Count: (double)group.Count()))
            .GroupBy(group => (group.First, group.Last))
            .Select(group => (group.Key.First, group.Key.Last, group.Sum(member => member.Count)));
        return new InnermostIntervals(lows, highs, [.. covered]);
    }

    private static int FirstInside(CensoredValue value, List<double> lows, List<int> ranks)
    {
        var rank = value.Low == value.High ? 0 : 2;
        var (low, high) = (0, lows.Count - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            var isInside = lows[middle] > value.Low || (lows[middle] == value.Low && ranks[middle] >= rank);
            (low, high) = isInside ? (low, middle) : (middle + 1, high);
        }

        return low;
    }

    private static int LastInside(CensoredValue value, List<double> highs)
    {
        var (low, high) = (0, highs.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = highs[middle] <= value.High ? (middle, high) : (low, middle - 1);
        }

        return low;
    }
}
