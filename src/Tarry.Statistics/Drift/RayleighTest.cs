namespace Tarry.Statistics.Drift;

/// <summary>
/// Whether phases crowd around one point of the cycle (Lord Rayleigh, 1919): presses that lock to the device's own
/// clock meet the same wait again and again, and bias its mean by up to T R/pi.
/// </summary>
/// <param name="ResultantLength">R, 0 for phases spread evenly, 1 for all alike.</param>
/// <param name="MeanPhase">Where they crowd, in cycles, 0 to below 1; without meaning where R is near 0.</param>
/// <param name="P">The probability of an R at least as large were the phases uniform.</param>
public readonly record struct RayleighTest(double ResultantLength, double MeanPhase, double P)
{
    /// <summary>The fewest phases.</summary>
    public const int SmallestCount = 2;

    /// <summary>
    /// R = |sum e^(2 pi i phase)|/n and p = exp(sqrt(1 + 4n + 4(n^2 - (nR)^2)) - (1 + 2n)) (J. H. Zar, Biostatistical
    /// Analysis, 27.4).
    /// </summary>
    /// <param name="phases">Phases in cycles; whole cycles do not matter. Finite.</param>
    /// <exception cref="ArgumentException">There are too few phases, or one is not finite.</exception>
    public static RayleighTest Of(ReadOnlySpan<double> phases)
    {
        Argument.RequireCount(phases, SmallestCount, nameof(phases));
        Argument.RequireFinite(phases, nameof(phases));
        var (cosines, sines) = (0.0, 0.0);
        foreach (var phase in phases)
        {
            var (sine, cosine) = Math.SinCos(2 * Math.PI * (phase - Math.Floor(phase)));
            cosines += cosine;
            sines += sine;
        }

        var n = (double)phases.Length;
        var length = Math.Min(n, Math.Sqrt((cosines * cosines) + (sines * sines)));
        var meanPhase = Math.Atan2(sines, cosines) / (2 * Math.PI);

        // The difference of the root and 1 + 2n, without cancellation.
        var root = Math.Sqrt(1 + (4 * n) + (4 * ((n * n) - (length * length))));
        var exponent = -4 * length * length / (root + 1 + (2 * n));
        return new RayleighTest(length / n, meanPhase < 0 ? meanPhase + 1 : meanPhase, Math.Exp(exponent));
    }
}
