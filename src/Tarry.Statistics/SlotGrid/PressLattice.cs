namespace Tarry.Statistics.SlotGrid;

/// <summary>Whether presses come so regularly that an interval cannot be told from its images about the press rate.</summary>
/// <remarks>
/// With phi = |mean e^(2 pi i d/D)| over the press intervals d and their median D, presses that wander from a lattice step by step
/// have power (1 + phi)/(1 - phi) at the press rate (renewal process: D. R. Cox, P. A. W. Lewis, The Statistical Analysis of
/// Series of Events, 1966, 4.5), against n for a lattice that never strays. From n/10 on an image is about as tall as its line.
/// </remarks>
public static class PressLattice
{
    private const double ShareOfLattice = 0.1;

    /// <summary>Whether the presses are such a lattice.</summary>
    /// <param name="series">A series with three presses or more; fewer are none.</param>
    public static bool IsIn(PressSeries series)
    {
        ArgumentNullException.ThrowIfNull(series);
        if (series.Count < 3)
        {
            return false;
        }

        var intervals = new double[series.Count - 1];
        for (var i = 0; i < intervals.Length; i++)
        {
            intervals[i] = series.Presses[i + 1] - series.Presses[i];
        }

        var sorted = (double[])intervals.Clone();
        Array.Sort(sorted);
        var median = sorted[sorted.Length / 2];
        if (!(median > 0))
        {
            return true;
        }

        var (re, im) = (0.0, 0.0);
        foreach (var interval in intervals)
        {
            var (sine, cosine) = Math.SinCos(2 * Math.PI * (interval / median));
            re += cosine;
            im += sine;
        }

        var phi = Math.Min(1, Math.Sqrt((re * re) + (im * im)) / intervals.Length);
        return 1 + phi > ShareOfLattice * series.Count * (1 - phi);
    }
}
