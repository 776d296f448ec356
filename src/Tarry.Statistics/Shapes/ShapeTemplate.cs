namespace Tarry.Statistics.Shapes;

/// <summary>A family with its parameters free of limits: places as they are, widths and scales by their logarithm, shares by their logit.</summary>
internal abstract class ShapeTemplate
{
    // Widths from a microsecond to a second.
    private const double Smallest = 1e-3;
    private const double Largest = 1e3;

    public abstract ShapeFamily Family { get; }

    /// <summary>How many parameters, without the late share.</summary>
    public abstract int Count { get; }

    public abstract LatencyShape Build(ReadOnlySpan<double> parameters);

    /// <summary>Parameters to start from; several, since the likelihood can have more than one peak.</summary>
    public abstract IEnumerable<double[]> Starts(RoughScale rough);

    public static double Positive(double logarithm) => Math.Clamp(Math.Exp(logarithm), Smallest, Largest);

    public static double Share(double logit) => 1 / (1 + Math.Exp(-logit));
}
