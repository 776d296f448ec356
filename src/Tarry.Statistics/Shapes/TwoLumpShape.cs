using Tarry.Metrology;

namespace Tarry.Statistics.Shapes;

/// <summary>A mixture of two lumps: with some probability the later one.</summary>
public sealed class TwoLumpShape : LatencyShape
{
    private readonly double share;

    /// <summary>A mixture of two normal lumps or of two blocks.</summary>
    /// <param name="earlier">The earlier lump: a <see cref="NormalShape"/> or <see cref="UniformNormalShape"/>.</param>
    /// <param name="later">The later lump, of the same kind.</param>
    /// <param name="laterShare">The share of the later lump, 0 to 1.</param>
    /// <exception cref="ArgumentException">The two are not both normal or both blocks.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The share is not from 0 to 1.</exception>
    public TwoLumpShape(LatencyShape earlier, LatencyShape later, double laterShare)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        ArgumentNullException.ThrowIfNull(later);
        if (earlier.Family != later.Family || earlier.Family is not (ShapeFamily.Normal or ShapeFamily.UniformNormal))
        {
            throw new ArgumentException($"The lumps are {earlier.Family} and {later.Family}; give two normal shapes or two blocks.", nameof(later));
        }

        if (!(laterShare is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(laterShare), laterShare, "A share lies from 0 to 1.");
        }

        (Earlier, Later, share) = (earlier, later, laterShare);
    }

    /// <summary>The earlier lump.</summary>
    public LatencyShape Earlier { get; }

    /// <summary>The later lump.</summary>
    public LatencyShape Later { get; }

    /// <summary>The share of the later lump.</summary>
    public double LaterShare => share;

    /// <inheritdoc/>
    public override ShapeFamily Family => Earlier.Family == ShapeFamily.Normal ? ShapeFamily.TwoNormalLumps : ShapeFamily.TwoUniformLumps;

    /// <inheritdoc/>
    public override IReadOnlyList<KeyValuePair<string, double>> Parameters =>
    [
        .. Earlier.Parameters.Select(parameter => new KeyValuePair<string, double>("earlier_" + parameter.Key, parameter.Value)),
        .. Later.Parameters.Select(parameter => new KeyValuePair<string, double>("later_" + parameter.Key, parameter.Value)),
        new("later_share", share),
    ];

    /// <inheritdoc/>
    public override double Mean => ((1 - share) * Earlier.Mean) + (share * Later.Mean);

    /// <inheritdoc/>
    public override double Variance
    {
        get
        {
            var apart = Later.Mean - Earlier.Mean;
            return ((1 - share) * Earlier.Variance) + (share * Later.Variance) + (share * (1 - share) * apart * apart);
        }
    }

    /// <inheritdoc/>
    internal override double NoiseSd => Math.Min(Earlier.NoiseSd, Later.NoiseSd);

    /// <inheritdoc/>
    public override double Density(double x) => ((1 - share) * Earlier.Density(x)) + (share * Later.Density(x));

    /// <inheritdoc/>
    public override double LowerTail(double x) => ((1 - share) * Earlier.LowerTail(x)) + (share * Later.LowerTail(x));

    /// <inheritdoc/>
    public override double UpperTail(double x) => ((1 - share) * Earlier.UpperTail(x)) + (share * Later.UpperTail(x));

    /// <inheritdoc/>
    public override double Draw(SeededGenerator generator)
    {
        ArgumentNullException.ThrowIfNull(generator);
        return generator.NextDouble() < share ? Later.Draw(generator) : Earlier.Draw(generator);
    }
}
