namespace Tarry.Statistics.SlotGrid;

/// <summary>Follows frames whose phase wanders, by the responses before and after each one.</summary>
/// <remarks>
/// Each residual phase r (cycles) is foretold by the mean phasor of its h neighbours to either side, itself left out; the h that
/// foretells best, by mean cos 2 pi (r - foretold), is taken, and none unless it beats the whole series by more than chance.
/// </remarks>
internal static class FrameTracking
{
    private const double WorthIt = 0.01;
    private static readonly int[] Neighbours = [128, 64, 32, 16, 8, 4, 2];

    /// <summary>The phase of the frames at each response, in cycles against the stable grid, and how well it foretells.</summary>
    /// <param name="residuals">Residual phases in the order of time.</param>
    /// <returns>Null where the grid is stable.</returns>
    public static (double[] Phases, double Agreement)? Of(double[] residuals)
    {
        var n = residuals.Length;
        var (cosines, sines) = (new double[n + 1], new double[n + 1]);
        for (var i = 0; i < n; i++)
        {
            var (sine, cosine) = Math.SinCos(2 * Math.PI * residuals[i]);
            cosines[i + 1] = cosines[i] + cosine;
            sines[i + 1] = sines[i] + sine;
        }

        var whole = Foretold(residuals, cosines, sines, n).Agreement;
        (double[] Phases, double Agreement)? best = null;
        foreach (var reach in Neighbours)
        {
            var tried = Foretold(residuals, cosines, sines, reach);
            if (tried.Agreement > (best?.Agreement ?? (whole + WorthIt)))
            {
                best = tried;
            }
        }

        return best;
    }

    private static (double[] Phases, double Agreement) Foretold(double[] residuals, double[] cosines, double[] sines, int reach)
    {
        var n = residuals.Length;
        var phases = new double[n];
        var agreement = 0.0;
        for (var i = 0; i < n; i++)
        {
            var (from, to) = (Math.Max(0, i - reach), Math.Min(n, i + reach + 1));
            var (own, ownSine) = (cosines[i + 1] - cosines[i], sines[i + 1] - sines[i]);
            var re = cosines[to] - cosines[from] - own;
            var im = sines[to] - sines[from] - ownSine;
            var size = Math.Sqrt((re * re) + (im * im));
            agreement += size > 0 ? ((re * own) + (im * ownSine)) / size : 0;
            phases[i] = Math.Atan2(im, re) / (2 * Math.PI);
        }

        return (phases, agreement / n);
    }
}
