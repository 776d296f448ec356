namespace Tarry.Statistics.Edges;

/// <summary>Finds the period with which a stretch of samples repeats, such as that of a backlight's modulation.</summary>
public static class DominantPeriod
{
    private const int Refinements = 24;

    /// <summary>The strongest frequency between two bounds; null where none stands out of the noise.</summary>
    /// <param name="samples">The stretch; its mean is taken off.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    /// <param name="lowestHz">The lowest frequency to look for.</param>
    /// <param name="highestHz">The highest, below half the sample rate.</param>
    /// <param name="leastAmplitude">The smallest amplitude that counts.</param>
    /// <remarks>
    /// The maximum of the periodogram on a grid of half its resolution, refined by golden section. For noise the power of a bin is
    /// exponential, so that the greatest of n is about ln n times the mean: it must be ln n + 7 times, less than 1 in 1,000 by chance (R. A.
    /// Fisher, Proc. R. Soc. A 125, 1929, in its large-sample form; from memory).
    /// </remarks>
    public static (double Hz, double Amplitude)? Find(ReadOnlySpan<double> samples, double sampleRateHz, double lowestHz, double highestHz, double leastAmplitude)
    {
        if (samples.Length < 32)
        {
            return null;
        }

        var mean = 0.0;
        foreach (var sample in samples)
        {
            mean += sample / samples.Length;
        }

        var centred = new double[samples.Length];
        for (var index = 0; index < centred.Length; index++)
        {
            // A Hann window: a step in level at an end must not look like a low frequency.
            centred[index] = (samples[index] - mean) * (1 - Math.Cos(2 * Math.PI * (index + 0.5) / centred.Length));
        }

        var step = sampleRateHz / samples.Length / 2;
        var (best, bestPower, sum, count) = (0.0, 0.0, 0.0, 0);
        for (var frequency = lowestHz; frequency <= highestHz; frequency += step)
        {
            var power = Power(centred, frequency / sampleRateHz);
            sum += power;
            count++;
            if (power > bestPower)
            {
                (best, bestPower) = (frequency, power);
            }
        }

        // The peak itself and its neighbours must not raise the noise that it is held against.
        var noise = count > 16 ? (sum - (3 * bestPower)) / (count - 8) : 0;
        var amplitude = 2 * Math.Sqrt(bestPower) / samples.Length;
        if (count <= 16 || bestPower < (Math.Log(count) + 7) * Math.Max(noise, 0) || amplitude < leastAmplitude)
        {
            return null;
        }

        var (low, high) = (best - step, best + step);
        var ratio = (Math.Sqrt(5) - 1) / 2;
        for (var refinement = 0; refinement < Refinements; refinement++)
        {
            var (left, right) = (high - (ratio * (high - low)), low + (ratio * (high - low)));
            (low, high) = Power(centred, left / sampleRateHz) > Power(centred, right / sampleRateHz) ? (low, right) : (left, high);
        }

        return ((low + high) / 2, amplitude);
    }

    private static double Power(double[] samples, double cyclesPerSample)
    {
        // Goertzel's recurrence.
        var coefficient = 2 * Math.Cos(2 * Math.PI * cyclesPerSample);
        double s1 = 0, s2 = 0;
        foreach (var sample in samples)
        {
            var s0 = sample + (coefficient * s1) - s2;
            (s2, s1) = (s1, s0);
        }

        return (s1 * s1) + (s2 * s2) - (coefficient * s1 * s2);
    }
}
