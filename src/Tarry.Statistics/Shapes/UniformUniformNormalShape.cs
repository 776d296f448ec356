using Tarry.Metrology;

namespace Tarry.Statistics.Shapes;

/// <summary>Two blocks added: a fixed delay, waits uniform over [0, T1] and [0, T2], and normal noise of standard deviation s.</summary>
/// <remarks>
/// f = s/(T1 T2) [G(u) - G(u - T1/s) - G(u - T2/s) + G(u - (T1 + T2)/s)] and F = s^2/(T1 T2) [H(u) - H(u - T1/s) -
/// H(u - T2/s) + H(u - (T1 + T2)/s)], u = (x - fixed)/s, G and H the first and second integral of Phi. A width below 0.02 s
/// joins the noise as T^2/12. Mean fixed + (T1 + T2)/2.
/// </remarks>
public sealed class UniformUniformNormalShape : LatencyShape
{
    private readonly double from;
    private readonly double first;
    private readonly double second;
    private readonly double sd;
    private readonly UniformNormalShape? limit;

    /// <summary>Two blocks added.</summary>
    /// <param name="fixedMs">Where they begin, in milliseconds.</param>
    /// <param name="firstBlockMs">The width of one, in milliseconds, above 0.</param>
    /// <param name="secondBlockMs">The width of the other, in milliseconds, above 0.</param>
    /// <param name="noiseSdMs">The standard deviation of the noise, in milliseconds, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A width or the noise is not above 0.</exception>
    public UniformUniformNormalShape(double fixedMs, double firstBlockMs, double secondBlockMs, double noiseSdMs)
    {
        Argument.RequirePositive(firstBlockMs, nameof(firstBlockMs));
        Argument.RequirePositive(secondBlockMs, nameof(secondBlockMs));
        Argument.RequirePositive(noiseSdMs, nameof(noiseSdMs));
        (from, first, second, sd) = (fixedMs, firstBlockMs, secondBlockMs, noiseSdMs);
        var (narrow, wide) = first < second ? (first, second) : (second, first);
        limit = narrow < UniformNormalShape.SmallestRatio * sd
            ? new UniformNormalShape(from + (0.5 * narrow), wide, Math.Sqrt((sd * sd) + (narrow * narrow / 12)))
            : null;
    }

    /// <inheritdoc/>
    public override ShapeFamily Family => ShapeFamily.UniformUniformNormal;

    /// <inheritdoc/>
    public override IReadOnlyList<KeyValuePair<string, double>> Parameters =>
        [new("fixed_ms", from), new("wider_block_ms", Math.Max(first, second)), new("narrower_block_ms", Math.Min(first, second)), new("noise_sd_ms", sd)];

    /// <inheritdoc/>
    public override double Mean => from + (0.5 * (first + second));

    /// <inheritdoc/>
    public override double Variance => (sd * sd) + (((first * first) + (second * second)) / 12);

    /// <inheritdoc/>
    internal override double NoiseSd => sd;

    /// <inheritdoc/>
    public override double Density(double x)
    {
        if (limit is not null)
        {
            return limit.Density(x);
        }

        var u = ((x > Mean ? (2 * Mean) - x : x) - from) / sd;
        return sd / (first * second) * Math.Max(0, NormalIntegrals.First(u) - NormalIntegrals.First(u - (first / sd))
            - NormalIntegrals.First(u - (second / sd)) + NormalIntegrals.First(u - ((first + second) / sd)));
    }

    /// <inheritdoc/>
    public override double LowerTail(double x)
    {
        if (limit is not null)
        {
            return limit.LowerTail(x);
        }

        var u = (x - from) / sd;
        var value = sd * sd / (first * second) * (NormalIntegrals.Second(u) - NormalIntegrals.Second(u - (first / sd))
            - NormalIntegrals.Second(u - (second / sd)) + NormalIntegrals.Second(u - ((first + second) / sd)));
        return Math.Clamp(value, 0, 1);
    }

    /// <inheritdoc/>
    public override double UpperTail(double x) => LowerTail((2 * Mean) - x);

    /// <inheritdoc/>
    public override double Draw(SeededGenerator generator)
    {
        ArgumentNullException.ThrowIfNull(generator);
        return from + (first * generator.NextDouble()) + (second * generator.NextDouble()) + (sd * generator.NextNormal());
    }
}
