namespace Tarry.Statistics.Drift;

/// <summary>Whether phases are spread evenly over the cycle, against any departure (N. H. Kuiper, Proc. K. Ned. Akad. Wet. A 63, 1960).</summary>
public static class KuiperTest
{
    /// <summary>
    /// V = D+ + D-, reported as V* = (sqrt n + 0.155 + 0.24/sqrt n) V (M. A. Stephens, J. R. Statist. Soc. B 32, 1970), with
    /// p = 2 sum (4 j^2 V*^2 - 1) exp(-2 j^2 V*^2).
    /// </summary>
    /// <param name="phases">Phases in cycles, two or more; whole cycles do not matter. Finite.</param>
    /// <exception cref="ArgumentException">There are too few phases, or one is not finite.</exception>
    public static StatisticTest Of(ReadOnlySpan<double> phases)
    {
        Argument.RequireCount(phases, 2, nameof(phases));
        Argument.RequireFinite(phases, nameof(phases));
        var sorted = phases.ToArray();
        for (var i = 0; i < sorted.Length; i++)
        {
            sorted[i] -= Math.Floor(sorted[i]);
        }

        Array.Sort(sorted);
        var n = (double)sorted.Length;
        var (above, below) = (double.NegativeInfinity, double.NegativeInfinity);
        for (var i = 0; i < sorted.Length; i++)
        {
            above = Math.Max(above, ((i + 1) / n) - sorted[i]);
            below = Math.Max(below, sorted[i] - (i / n));
        }

        var statistic = (Math.Sqrt(n) + 0.155 + (0.24 / Math.Sqrt(n))) * (above + below);
        return new StatisticTest(statistic, UpperTail(statistic));
    }

    private static double UpperTail(double statistic)
    {
        // Below 0.4 the probability is 1 to seven digits, and the series no longer converges.
        if (statistic < 0.4)
        {
            return 1;
        }

        var sum = 0.0;
        for (var j = 1; j <= 100; j++)
        {
            var square = j * j * statistic * statistic;
            sum += ((4 * square) - 1) * Math.Exp(-2 * square);
        }

        return Math.Clamp(2 * sum, 0, 1);
    }
}
