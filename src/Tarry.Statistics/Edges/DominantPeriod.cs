using System.Runtime.Intrinsics;

namespace Tarry.Statistics.Edges;

/// <summary>Finds the period with which a stretch of samples repeats, such as that of a backlight's modulation.</summary>
public static class DominantPeriod
{
    private const int Refinements = 24;

    /// <summary>Frequencies that are computed together.</summary>
    private const int Together = 16;

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
        Span<double> powers = stackalloc double[Together];
        for (var from = lowestHz; from <= highestHz; from += Together * step)
        {
            Powers(centred, from / sampleRateHz, step / sampleRateHz, powers);
            for (var index = 0; index < Together && from + (index * step) <= highestHz; index++)
            {
                sum += powers[index];
                count++;
                if (powers[index] > bestPower)
                {
                    (best, bestPower) = (from + (index * step), powers[index]);
                }
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

    // The same for several frequencies: each step waits for the one before, in which time those of others are done.
    private static void Powers(double[] samples, double firstCyclesPerSample, double stepCyclesPerSample, Span<double> powers)
    {
        for (var index = 0; index < Together; index++)
        {
            powers[index] = 2 * Math.Cos(2 * Math.PI * (firstCyclesPerSample + (index * stepCyclesPerSample)));
        }

        var (c0, c1, c2, c3) = (Vector256.Create<double>(powers), Vector256.Create<double>(powers[4..]), Vector256.Create<double>(powers[8..]), Vector256.Create<double>(powers[12..]));
        var zero = Vector256<double>.Zero;
        var (a0, a1, a2, a3, b0, b1, b2, b3) = (zero, zero, zero, zero, zero, zero, zero, zero);
        foreach (var sample in samples)
        {
            var x = Vector256.Create(sample);
            (b0, a0) = (a0, x + (c0 * a0) - b0);
            (b1, a1) = (a1, x + (c1 * a1) - b1);
            (b2, a2) = (a2, x + (c2 * a2) - b2);
            (b3, a3) = (a3, x + (c3 * a3) - b3);
        }

        Power(c0, a0, b0).CopyTo(powers);
        Power(c1, a1, b1).CopyTo(powers[4..]);
        Power(c2, a2, b2).CopyTo(powers[8..]);
        Power(c3, a3, b3).CopyTo(powers[12..]);
    }

    private static Vector256<double> Power(Vector256<double> coefficient, Vector256<double> s1, Vector256<double> s2) => (s1 * s1) + (s2 * s2) - (coefficient * s1 * s2);
}
