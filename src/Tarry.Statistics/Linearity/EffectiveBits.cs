namespace Tarry.Statistics.Linearity;

/// <summary>How many bits an ideal converter would need to be as good.</summary>
public static class EffectiveBits
{
    private static readonly double DecibelsPerBit = 20 * Math.Log10(2);
    private static readonly double IdealOffset = 10 * Math.Log10(1.5);

    /// <summary>From the ratio of signal to noise and distortion of a full-scale sine: (SINAD - 10 log10 1.5) / (20 log10 2) (IEEE 1241, 4.5.2).</summary>
    /// <param name="sinadDecibels">SINAD in decibels.</param>
    public static double FromSinad(double sinadDecibels) => (sinadDecibels - IdealOffset) / DecibelsPerBit;

    /// <summary>The SINAD of an ideal converter, in decibels.</summary>
    /// <param name="bits">Its bits.</param>
    public static double IdealSinad(double bits) => (bits * DecibelsPerBit) + IdealOffset;

    /// <summary>From a root mean square error: log2(span / (error sqrt 12)), the bits of the converter whose rounding alone errs as much (IEEE 1241, 4.5.2).</summary>
    /// <param name="span">The span of all codes.</param>
    /// <param name="error">The root mean square error with rounding in it, in the same unit, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above 0.</exception>
    public static double FromError(double span, double error)
    {
        Argument.RequirePositive(span, nameof(span));
        Argument.RequirePositive(error, nameof(error));
        return Math.Log2(span / (error * Math.Sqrt(12)));
    }
}
