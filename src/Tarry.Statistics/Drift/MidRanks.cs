namespace Tarry.Statistics.Drift;

/// <summary>Ranks from 1, ties sharing the mean of theirs.</summary>
internal static class MidRanks
{
    public static double[] Of(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        var order = new int[sorted.Length];
        for (var i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        Array.Sort(sorted, order);
        var ranks = new double[sorted.Length];
        for (var start = 0; start < sorted.Length;)
        {
            var end = start + 1;
            while (end < sorted.Length && sorted[end] == sorted[start])
            {
                end++;
            }

            for (var i = start; i < end; i++)
            {
                ranks[order[i]] = 0.5 * (start + 1 + end);
            }

            start = end;
        }

        return ranks;
    }
}
