namespace Tarry.Findings.Sticks.Recordings;

/// <summary>By how much rounding to a step can shift the mean of positions, whatever their number.</summary>
/// <remarks>
/// Noise of standard deviation s spreads rounding errors out; what is left of them has amplitude (step/pi) exp(-2 pi^2 s^2/step^2), the
/// first term of the Fourier series of the rounding error (B. Widrow, I. Kollar, Quantization Noise, 2008, 4; from memory). Positions of
/// one or two steps do not tell s: half a step.
/// </remarks>
internal static class RoundingError
{
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

        if (greatest - least < 1.5 * step)
        {
            return step / 2;
        }

        var noise = Math.Max(0, variance - (step * step / 12));
        return Math.Min(step / 2, step / Math.PI * Math.Exp(-2 * Math.PI * Math.PI * noise / (step * step)));
    }
}
