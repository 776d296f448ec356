using Tarry.Metrology;
using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Shapes;

/// <summary>A block: a fixed delay, a wait that is uniform over [0, T], and normal noise of standard deviation s.</summary>
/// <remarks>
/// f = [Phi(u) - Phi(u - T/s)]/T and F = (s/T) [G(u) - G(u - T/s)], u = (x - fixed)/s, G(u) = u Phi(u) + phi(u). For T below
/// 0.02 s, where the difference loses its digits, a normal curve of variance s^2 + T^2/12. Mean fixed + T/2.
/// </remarks>
public sealed class UniformNormalShape : LatencyShape
{
    internal const double SmallestRatio = 0.02;

    private readonly double from;
    private readonly double width;
    private readonly double sd;
    private readonly NormalShape? limit;

    /// <summary>A block.</summary>
    /// <param name="fixedMs">Where the block begins, in milliseconds.</param>
    /// <param name="blockMs">How wide it is, in milliseconds, above 0.</param>
    /// <param name="noiseSdMs">The standard deviation of the noise, in milliseconds, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Width or noise is not above 0.</exception>
    public UniformNormalShape(double fixedMs, double blockMs, double noiseSdMs)
    {
        Argument.RequirePositive(blockMs, nameof(blockMs));
        Argument.RequirePositive(noiseSdMs, nameof(noiseSdMs));
        (from, width, sd) = (fixedMs, blockMs, noiseSdMs);
        limit = width < SmallestRatio * sd ? new NormalShape(Mean, Math.Sqrt(Variance)) : null;
    }

    /// <inheritdoc/>
    public override ShapeFamily Family => ShapeFamily.UniformNormal;

    /// <inheritdoc/>
    public override IReadOnlyList<KeyValuePair<string, double>> Parameters =>
        [new("fixed_ms", from), new("block_ms", width), new("noise_sd_ms", sd)];

    /// <inheritdoc/>
    public override double Mean => from + (0.5 * width);

    /// <inheritdoc/>
    public override double Variance => (sd * sd) + (width * width / 12);

    /// <inheritdoc/>
    internal override double NoiseSd => sd;

    /// <inheritdoc/>
    public override double Density(double x)
    {
        if (limit is not null)
        {
            return limit.Density(x);
        }

        // The mirror image on the near side: there both terms are small.
        var near = (x > Mean ? (2 * Mean) - x : x) - from;
        return (NormalDistribution.Cdf(near / sd) - NormalDistribution.Cdf((near - width) / sd)) / width;
    }

    /// <inheritdoc/>
    public override double LowerTail(double x)
    {
        if (limit is not null)
        {
            return limit.LowerTail(x);
        }

        var u = (x - from) / sd;
        return Math.Min(1, sd / width * (NormalIntegrals.First(u) - NormalIntegrals.First(u - (width / sd))));
    }

    /// <inheritdoc/>
    public override double UpperTail(double x) => LowerTail((2 * Mean) - x);

    /// <inheritdoc/>
    public override double Draw(SeededGenerator generator)
    {
        ArgumentNullException.ThrowIfNull(generator);
        return from + (width * generator.NextDouble()) + (sd * generator.NextNormal());
    }
}
