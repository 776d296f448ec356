namespace Tarry.Statistics.Edges;

/// <summary>Where in a stretch of samples noise ends and a signal begins.</summary>
public static class OnsetPicker
{
    /// <summary>Where the signal begins, half-way between the last sample without and the first with it; null where the stretch is too short or all zero.</summary>
    /// <param name="samples">Zero-mean samples that begin with noise and end within the signal.</param>
    /// <remarks>
    /// The k that makes AIC(k) = k ln var(x[0..k)) + (n - k) ln var(x[k..n)) smallest: the best division into two stretches of
    /// different variance (N. Maeda, Zisin 38, 1985; from memory). Linear in the number of samples.
    /// </remarks>
    public static double? Pick(ReadOnlySpan<double> samples)
    {
        const int fewest = 8;
        var total = 0.0;
        foreach (var sample in samples)
        {
            total += sample * sample;
        }

        if (samples.Length < 3 * fewest || total == 0)
        {
            return null;
        }

        // A silent recording has no variance to take the logarithm of: a thousandth of the mean stands for it.
        var floor = 1e-6 * total / samples.Length;
        var (best, bestCriterion, before) = (default(double?), double.PositiveInfinity, 0.0);
        for (var k = 1; k < samples.Length - fewest; k++)
        {
            before += samples[k - 1] * samples[k - 1];
            if (k < fewest)
            {
                continue;
            }

            var criterion = (k * Math.Log((before / k) + floor)) + ((samples.Length - k) * Math.Log((Math.Max(0, total - before) / (samples.Length - k)) + floor));
            if (criterion < bestCriterion)
            {
                (best, bestCriterion) = (k, criterion);
            }
        }

        return best - 0.5;
    }
}
