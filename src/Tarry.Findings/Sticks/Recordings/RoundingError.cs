namespace Tarry.Findings.Sticks.Recordings;

/// <summary>By how much rounding to a step can shift the mean of positions, whatever their number.</summary>
/// <remarks>
/// Noise of standard deviation s spreads rounding errors out; what is left of them is at most the sum over k of
/// (step/(pi k)) exp(-2 pi^2 k^2 s^2/step^2), the Fourier series of the rounding error, and half a step (B. Widrow, I. Kollar, Quantization
/// Noise, 2008, 4; from memory). Positions of one or two steps do not tell s: half a step.
/// </remarks>
internal static class RoundingError
{
    private const int Terms = 8;

    public static double Of(ReadOnlySpan<double> positions, double step, double variance)
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

        return greatest - least < 1.5 * step ? step / 2 : Of(step, variance);
    }

    /// <summary>By the variance of the positions, rounding in it.</summary>
    public static double Of(double step, double variance)
    {
        if (step == 0)
        {
            return 0;
        }

        var noise = Math.Max(0, variance - (step * step / 12)) / (step * step);
        var sum = 0.0;
        for (var k = 1; k <= Terms; k++)
        {
            sum += step / Math.PI / k * Math.Exp(-2 * Math.PI * Math.PI * k * k * noise);
        }

        return Math.Min(step / 2, sum);
    }
}
