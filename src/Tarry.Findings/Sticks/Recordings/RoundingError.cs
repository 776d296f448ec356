namespace Tarry.Findings.Sticks.Recordings;

/// <summary>By how much rounding to a step can shift the mean of positions, whatever their number.</summary>
/// <remarks>
/// Noise of standard deviation s spreads rounding errors out; what is left of them is at most the sum over k of
/// (step/(pi k)) exp(-2 pi^2 k^2 s^2/step^2), the Fourier series of the rounding error, and half a step (B. Widrow, I. Kollar, Quantization
/// Noise, 2008, 4; from memory).
/// </remarks>
internal static class RoundingError
{
    private const int Terms = 8;

    /// <summary>By the standard deviation of the noise; of positions within one or two steps, which do not tell it, half a step.</summary>
    public static double Of(ReadOnlySpan<double> positions, double step, double noise)
    {
        if (step == 0)
        {
            return 0;
        }

        var (least, greatest) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var position in positions)
        {
            (least, greatest) = (Math.Min(least, position), Math.Max(greatest, position));
        }

        return greatest - least < 1.5 * step ? step / 2 : OfNoise(step, noise);
    }

    /// <summary>By the variance of the positions, rounding in it.</summary>
    public static double Of(double step, double variance) => OfNoise(step, Math.Sqrt(Math.Max(0, variance - (step * step / 12))));

    private static double OfNoise(double step, double noise)
    {
        if (step == 0)
        {
            return 0;
        }

        var share = noise * noise / (step * step);
        var sum = 0.0;
        for (var k = 1; k <= Terms; k++)
        {
            sum += step / Math.PI / k * Math.Exp(-2 * Math.PI * Math.PI * k * k * share);
        }

        return Math.Min(step / 2, sum);
    }
}
