using Tarry.Metrology;
using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Shapes;

/// <summary>Normal noise about a fixed delay, and an exponential wait of mean tau: a long tail to the right.</summary>
/// <remarks>
/// With z = (x - fixed)/s and v = s/tau - z: f = E/tau and 1 - F = Phi(-z) + E, where E = exp(-z^2/2) erfcx(v/sqrt 2)/2, and
/// where v is far below zero E = exp(v^2/2 - z^2/2) Phi(-v). Below the mean of the noise F = exp(-z^2/2) [erfcx(-z/sqrt 2) -
/// erfcx(v/sqrt 2)]/2. Mean fixed + tau, variance s^2 + tau^2.
/// </remarks>
public sealed class ExponentiallyModifiedNormalShape : LatencyShape
{
    private const double InverseRootTwo = 0.70710678118654752440;

    // Below it erfcx overflows long after E is the plain exponential to the last bit.
    private const double LowestForScaledError = -6;

    private readonly double location;
    private readonly double sd;
    private readonly double tau;

    /// <summary>An exponentially modified normal shape.</summary>
    /// <param name="fixedMs">The mean of the normal part, in milliseconds.</param>
    /// <param name="noiseSdMs">Its standard deviation, in milliseconds, above 0.</param>
    /// <param name="tailMs">The mean of the exponential part, in milliseconds, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Noise or tail is not above 0.</exception>
    public ExponentiallyModifiedNormalShape(double fixedMs, double noiseSdMs, double tailMs)
    {
        Argument.RequirePositive(noiseSdMs, nameof(noiseSdMs));
        Argument.RequirePositive(tailMs, nameof(tailMs));
        (location, sd, tau) = (fixedMs, noiseSdMs, tailMs);
    }

    /// <inheritdoc/>
    public override ShapeFamily Family => ShapeFamily.ExponentiallyModifiedNormal;

    /// <inheritdoc/>
    public override IReadOnlyList<KeyValuePair<string, double>> Parameters =>
        [new("fixed_ms", location), new("noise_sd_ms", sd), new("tail_mean_ms", tau)];

    /// <inheritdoc/>
    public override double Mean => location + tau;

    /// <inheritdoc/>
    public override double Variance => (sd * sd) + (tau * tau);

    /// <inheritdoc/>
    internal override double NoiseSd => sd;

    /// <inheritdoc/>
    public override double Density(double x) => Tilted((x - location) / sd) / tau;

    /// <inheritdoc/>
    public override double LowerTail(double x)
    {
        var z = (x - location) / sd;
        return z < 0
            ? Math.Max(0, 0.5 * Math.Exp(-0.5 * z * z) * (NormalIntegrals.ScaledComplementaryError(-z * InverseRootTwo)
                - NormalIntegrals.ScaledComplementaryError(((sd / tau) - z) * InverseRootTwo)))
            : Math.Max(0, NormalDistribution.Cdf(z) - Tilted(z));
    }

    /// <inheritdoc/>
    public override double UpperTail(double x)
    {
        var z = (x - location) / sd;
        return Math.Min(1, NormalDistribution.Cdf(-z) + Tilted(z));
    }

    /// <inheritdoc/>
    public override double Draw(SeededGenerator generator)
    {
        ArgumentNullException.ThrowIfNull(generator);
        return location + (sd * generator.NextNormal()) - (tau * Math.Log(1 - generator.NextDouble()));
    }

    private double Tilted(double z)
    {
        var v = (sd / tau) - z;
        return v > LowestForScaledError
            ? 0.5 * Math.Exp(-0.5 * z * z) * NormalIntegrals.ScaledComplementaryError(v * InverseRootTwo)
            : Math.Exp(0.5 * ((v * v) - (z * z))) * NormalDistribution.Cdf(-v);
    }
}
