using Tarry.Metrology;
using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Shapes;

/// <summary>A fixed delay and normal noise.</summary>
public sealed class NormalShape : LatencyShape
{
    private readonly double sd;

    /// <summary>A normal shape.</summary>
    /// <param name="meanMs">The mean, in milliseconds.</param>
    /// <param name="sdMs">The standard deviation, in milliseconds, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is not above 0.</exception>
    public NormalShape(double meanMs, double sdMs)
    {
        Argument.RequirePositive(sdMs, nameof(sdMs));
        Mean = meanMs;
        sd = sdMs;
    }

    /// <inheritdoc/>
    public override ShapeFamily Family => ShapeFamily.Normal;

    /// <inheritdoc/>
    public override IReadOnlyList<KeyValuePair<string, double>> Parameters => [new("fixed_ms", Mean), new("noise_sd_ms", sd)];

    /// <inheritdoc/>
    public override double Mean { get; }

    /// <inheritdoc/>
    public override double Variance => sd * sd;

    /// <inheritdoc/>
    internal override double NoiseSd => sd;

    /// <inheritdoc/>
    public override double Density(double x) => NormalDistribution.Density((x - Mean) / sd) / sd;

    /// <inheritdoc/>
    public override double LowerTail(double x) => NormalTable.At((x - Mean) / sd).Cumulative;

    /// <inheritdoc/>
    public override double UpperTail(double x) => NormalTable.At((Mean - x) / sd).Cumulative;

    /// <inheritdoc/>
    public override double Draw(SeededGenerator generator)
    {
        ArgumentNullException.ThrowIfNull(generator);
        return Mean + (sd * generator.NextNormal());
    }
}
