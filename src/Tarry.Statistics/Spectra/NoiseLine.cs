using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Spectra;

/// <summary>A steady tone in noise, such as mains hum: the tallest line of a spectrum over the level around it.</summary>
/// <param name="FrequencyHz">Where it stands, to the spectrum's step.</param>
/// <param name="Amplitude">Its root mean square amplitude, in the unit of the values.</param>
/// <param name="P">The chance that noise alone has a line as tall anywhere in the spectrum, as a bound.</param>
/// <remarks>
/// The ratio of a line's density to the median of 24 to either side (its nearest two left out) is held against F of 1.89 K and 14 times as
/// many degrees of freedom (the median of 44 densities of which neighbours are alike), times the number of frequencies (Bonferroni). Power: the excess over the level of the line and its two
/// neighbours on either side, over which Hann's window spreads it. Slow drift is not a line: the first four frequencies are left out.
/// </remarks>
public readonly record struct NoiseLine(double FrequencyHz, double Amplitude, double P)
{
    private const int Around = 24;
    private const int Near = 2;
    private const int First = 4;
    private const double DegreesOfFreedomPerPiece = 1.89;
    private const double LevelDegrees = 14;

    /// <summary>The most significant line; null where the spectrum is too short for one.</summary>
    /// <param name="spectrum">The spectrum.</param>
    public static NoiseLine? Of(NoiseSpectrum spectrum)
    {
        ArgumentNullException.ThrowIfNull(spectrum);
        var density = spectrum.Density;
        if (density.Count < First + (2 * Near) + Around)
        {
            return null;
        }

        var (at, ratio, level) = (-1, 0.0, 0.0);
        for (var k = First; k < density.Count - 1; k++)
        {
            var around = Level(density, k);
            if (around > 0 && density[k] / around > ratio)
            {
                (at, ratio, level) = (k, density[k] / around, around);
            }
        }

        if (at < 0)
        {
            return null;
        }

        var degrees = DegreesOfFreedomPerPiece * spectrum.Pieces;
        // The median of chi-squared over its degrees of freedom (E. B. Wilson, M. M. Hilferty, 1931).
        var median = Math.Pow(1 - (2 / (9 * degrees)), 3);
        var p = Math.Min(1, (density.Count - First) * FisherDistribution.UpperTail(ratio * median, degrees, LevelDegrees * degrees));
        var power = 0.0;
        for (var k = Math.Max(0, at - Near); k <= Math.Min(density.Count - 1, at + Near); k++)
        {
            power += Math.Max(0, density[k] - level) * spectrum.StepHz;
        }

        return new NoiseLine((at + 1) * spectrum.StepHz, Math.Sqrt(power), p);
    }

    private static double Level(IReadOnlyList<double> density, int at)
    {
        Span<double> around = stackalloc double[2 * Around];
        var count = 0;
        for (var k = Math.Max(0, at - Around); k <= Math.Min(density.Count - 1, at + Around); k++)
        {
            if (Math.Abs(k - at) > Near && count < around.Length)
            {
                around[count++] = density[k];
            }
        }

        around[..count].Sort();
        return (around[(count - 1) / 2] + around[count / 2]) / 2;
    }
}
