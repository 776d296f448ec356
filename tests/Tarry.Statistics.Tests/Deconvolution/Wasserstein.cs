namespace Tarry.Statistics.Tests.Deconvolution;

/// <summary>The Wasserstein-1 distance: the area between two distribution functions.</summary>
internal static class Wasserstein
{
    /// <summary>Between two samples.</summary>
    public static double Samples(double[] first, double[] second)
    {
        var (a, b) = (first.Order().ToArray(), second.Order().ToArray());
        var all = a.Concat(b).Order().ToArray();
        return all.Zip(all.Skip(1)).Sum(step => (step.Second - step.First) * Math.Abs(Share(a, step.First) - Share(b, step.First)));
    }

    /// <summary>Between two distribution functions, by the midpoint rule.</summary>
    public static double Functions(Func<double, double> first, Func<double, double> second, double from, double to, int steps)
    {
        var step = (to - from) / steps;
        return Enumerable.Range(0, steps).Sum(i => step * Math.Abs(first(from + ((i + 0.5) * step)) - second(from + ((i + 0.5) * step))));
    }

    /// <summary>Between a density on a grid, spread evenly over its bins, and a sample.</summary>
    public static double Density(double from, double step, IReadOnlyList<double> perUnit, double[] sample)
    {
        var sorted = sample.Order().ToArray();
        var left = from - (step / 2);
        var cumulated = new double[perUnit.Count + 1];
        for (var i = 0; i < perUnit.Count; i++)
        {
            cumulated[i + 1] = cumulated[i] + (step * perUnit[i]);
        }

        double Distribution(double x)
        {
            var at = (x - left) / step;
            return at <= 0 ? 0 : at >= perUnit.Count ? cumulated[^1] : cumulated[(int)at] + ((at - (int)at) * (cumulated[(int)at + 1] - cumulated[(int)at]));
        }

        var low = Math.Min(left, sorted[0]);
        var high = Math.Max(left + (perUnit.Count * step), sorted[^1]);
        return Functions(Distribution, x => Share(sorted, x), low, high, (int)Math.Ceiling((high - low) / (step / 10)));
    }

    private static double Share(double[] sorted, double x)
    {
        var (low, high) = (0, sorted.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = sorted[middle] <= x ? (middle + 1, high) : (low, middle);
        }

        return low / (double)sorted.Length;
    }
}
