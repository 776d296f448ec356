using Tarry.Statistics.SlotGrid;

namespace Tarry.Statistics.Spectra;

/// <summary>The power of noise over frequency: averaged periodograms of overlapping pieces (P. D. Welch, IEEE Trans. Audio Electroacoust. 15, 1967).</summary>
/// <remarks>
/// Pieces of a power of two, half overlapping, their mean taken off, under Hann's window. One-sided density: its sum times the step is
/// the variance. The values of neighbouring pieces are nearly independent under that window, so a density averaged over K pieces has a
/// relative standard error of about 1.05/sqrt(K) and is compared with chi-squared of 1.89 K degrees of freedom (Welch, there).
/// </remarks>
public sealed class NoiseSpectrum
{
    /// <summary>The longest piece.</summary>
    public const int LongestPiece = 4096;

    /// <summary>The fewest pieces that are averaged.</summary>
    public const int FewestPieces = 8;

    private const int ShortestPiece = 64;
    private readonly double[] density;

    private NoiseSpectrum(double[] density, double stepHz, int pieces) => (this.density, StepHz, Pieces) = (density, stepHz, pieces);

    /// <summary>The density at each multiple of the step from 1 up to half the sampling rate, in units squared per hertz.</summary>
    public IReadOnlyList<double> Density => density;

    /// <summary>The step between frequencies.</summary>
    public double StepHz { get; }

    /// <summary>How many pieces were averaged.</summary>
    public int Pieces { get; }

    /// <summary>The spectrum; null where there are too few values for 8 pieces of 64.</summary>
    /// <param name="values">Evenly spaced values.</param>
    /// <param name="rateHz">How many a second.</param>
    /// <param name="longest">The longest piece, a power of two of at least 64.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not above 0.</exception>
    public static NoiseSpectrum? Of(ReadOnlySpan<double> values, double rateHz, int longest = LongestPiece)
    {
        Argument.RequirePositive(rateHz, nameof(rateHz));
        var size = longest;
        while (size > ShortestPiece && PiecesOf(values.Length, size) < FewestPieces)
        {
            size /= 2;
        }

        var pieces = PiecesOf(values.Length, size);
        return pieces < FewestPieces ? null : Averaged(values, rateHz, size, pieces);
    }

    private static int PiecesOf(int count, int size) => count < size ? 0 : ((count - size) / (size / 2)) + 1;

    private static NoiseSpectrum Averaged(ReadOnlySpan<double> values, double rateHz, int size, int pieces)
    {
        var window = new double[size];
        var squares = 0.0;
        for (var i = 0; i < size; i++)
        {
            window[i] = 0.5 * (1 - Math.Cos(2 * Math.PI * i / size));
            squares += window[i] * window[i];
        }

        var density = new double[size / 2];
        var transform = FourierTransform.OfSize(size);
        float[] re = new float[size], im = new float[size], workRe = new float[size], workIm = new float[size];
        for (var piece = 0; piece < pieces; piece++)
        {
            var part = values.Slice(piece * (size / 2), size);
            var mean = 0.0;
            foreach (var value in part)
            {
                mean += value / size;
            }

            for (var i = 0; i < size; i++)
            {
                re[i] = (float)(window[i] * (part[i] - mean));
            }

            Array.Clear(im);
            transform.Forward(ref re, ref im, ref workRe, ref workIm);
            for (var k = 0; k < density.Length; k++)
            {
                var sides = k == density.Length - 1 ? 1 : 2;
                density[k] += sides * (((double)re[k + 1] * re[k + 1]) + ((double)im[k + 1] * im[k + 1])) / (squares * rateHz * pieces);
            }
        }

        return new NoiseSpectrum(density, rateHz / size, pieces);
    }
}
