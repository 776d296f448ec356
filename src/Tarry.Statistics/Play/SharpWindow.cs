namespace Tarry.Statistics.Play;

/// <summary>Compensation for a player who never errs: the fullest closed window of width 2w over the sorted latencies, by two pointers.</summary>
internal static class SharpWindow
{
    /// <summary>The fullest window. Where several are alike, the middle one of them.</summary>
    public static HitOptimum Best(ReadOnlySpan<double> values, ReadOnlySpan<double> weights, double window)
    {
        var (share, first, last) = (-1.0, 0, 0);
        var (sum, end) = (0.0, 0);
        var alike = new List<(int First, int Last)>();
        for (var start = 0; start < values.Length; start++)
        {
            while (end < values.Length && values[end] <= values[start] + (2 * window) + HitKernel.Rounding)
            {
                sum += weights[end++];
            }

            // Sums of the same weights in another order differ in their last digits.
            if (sum > share + 1e-12)
            {
                share = sum;
                alike.Clear();
            }

            if (sum > share - 1e-12)
            {
                alike.Add((start, end - 1));
            }

            sum -= weights[start];
        }

        (first, last) = alike[alike.Count / 2];
        return new HitOptimum(0.5 * (values[first] + values[last]), Math.Min(1, share));
    }

    /// <summary>Only the share of the fullest window.</summary>
    public static double BestShare(ReadOnlySpan<double> values, ReadOnlySpan<double> weights, double window)
    {
        var (share, sum, end) = (0.0, 0.0, 0);
        for (var start = 0; start < values.Length; start++)
        {
            while (end < values.Length && values[end] <= values[start] + (2 * window) + HitKernel.Rounding)
            {
                sum += weights[end++];
            }

            share = Math.Max(share, sum);
            sum -= weights[start];
        }

        return Math.Min(1, share);
    }

    /// <summary>Every compensation that hits at least so often, as closed intervals, ascending.</summary>
    public static IReadOnlyList<ConfidenceLimits> AtLeast(ReadOnlySpan<double> values, ReadOnlySpan<double> weights, double window, double share)
    {
        var found = new List<ConfidenceLimits>();
        var (sum, enter, leave, from) = (0.0, 0, 0, double.NaN);
        while (leave < values.Length)
        {
            // Entering comes first where both are at one place: the window is closed.
            if (enter < values.Length && values[enter] - window <= values[leave] + window + HitKernel.Rounding)
            {
                sum += weights[enter];
                if (double.IsNaN(from) && sum >= share - 1e-12)
                {
                    from = values[enter] - window;
                }

                enter++;
            }
            else
            {
                sum -= weights[leave];
                if (!double.IsNaN(from) && sum < share - 1e-12)
                {
                    found.Add(new ConfidenceLimits(Math.Min(from, values[leave] + window), values[leave] + window));
                    from = double.NaN;
                }

                leave++;
            }
        }

        return found;
    }
}
